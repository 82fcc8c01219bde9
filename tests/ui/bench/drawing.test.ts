import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { colourDistance, NOTICEABLE, type SeenSyringe, type Srgb } from '../../../src/lib/bench';
import { draw, drySyringe, fitTip, lineMl } from '../../../src/lib/glassware';
import { houseKits, type SyringeDelivery } from '../../../src/lib/kits';
import {
	dropRadiusMm,
	fallenShare,
	hangingDropPath
} from '../../../src/lib/ui/bench/drawing/drop-shape';
import {
	clouded,
	cssColour,
	NIGHT_GLOW,
	shade,
	vialShades
} from '../../../src/lib/ui/bench/drawing/paint';
import { plainScale, printPath, ticksOf } from '../../../src/lib/ui/bench/drawing/printed-scale';
import {
	apparentShiftMl,
	syringeView,
	tipPath,
	tubeLiquidPath
} from '../../../src/lib/ui/bench/drawing/syringe-shape';
import { BASE, depthOf, plumeBlobs, swirlPose } from '../../../src/lib/ui/bench/drawing/vial-shape';

describe('printed scales', () => {
	test('a line at every graduation, long ones with their numeral', () => {
		const ticks = ticksOf({ graduationMl: 0.02, numeralEveryMl: 0.1, highestMl: 1 });
		expect(ticks).toHaveLength(51);
		expect(ticks.filter((tick) => tick.isLong).map((tick) => tick.label)).toEqual([
			'0.0',
			'0.1',
			'0.2',
			'0.3',
			'0.4',
			'0.5',
			'0.6',
			'0.7',
			'0.8',
			'0.9',
			'1.0'
		]);
		expect(ticks[23]).toEqual({ numeralMl: 0.46, isLong: false, label: null });
	});
	test('a plain scale has whole numbers of short lines between its numerals', () => {
		for (const capacityMl of [6, 8, 10, 15, 22, 28]) {
			const { graduationMl, numeralEveryMl } = plainScale(capacityMl);
			expect(Number.isInteger(Number((numeralEveryMl / graduationMl).toFixed(6)))).toBe(true);
		}
	});
	test('at eye level a printed line is straight, off it the line sags', () => {
		expect(printPath([-10], -5, 10, 0)).toBe('M-5 -10q4 0 10 0');
		expect(printPath([-10], -5, 10, 4)).toContain('10 4');
	});
});

const syringe: SyringeDelivery = houseKits
	.map((kit) => kit.delivery)
	.find((delivery): delivery is SyringeDelivery => delivery.by === 'syringe')!;

function filledToSeal(sealMl: number, tipVolumeMl: number): SeenSyringe {
	const dry = drySyringe({
		barrelEndMl: syringe.barrelEndMl,
		tipVolumeMl,
		nozzleMl: 0.04,
		sealRimMl: 0.05
	});
	const filled = draw(fitTip(dry, true), sealMl, 'inTitrant');
	return {
		by: 'syringe',
		tip: 'fitted',
		sealMl: filled.sealMl,
		lineMl: lineMl(filled),
		cushionMl: filled.cushionMl,
		tipLiquid: 1,
		tipAirMl: 0,
		hangingMl: 0,
		dripping: false
	};
}
const level = { pxPerMl: 200, eyeDegrees: 0, isTurned: false };

describe('the syringe as it is seen', () => {
	// Common practice, no source: filled to the seal, a tip of 0.15 to 0.20 mL leaves the line at 0.80 to 0.85.
	test.each([0.15, 0.17, 0.2])(
		'with a tip of %f mL the drawing shows seal at 1.00, an empty cushion, the line at 0.80 to 0.85',
		(tipVolumeMl) => {
			const view = syringeView(filledToSeal(1, tipVolumeMl), { ...level, tipVolumeMl });
			expect(view.sealY).toBeCloseTo(-200, 6);
			expect(view.liquid!.toY).toBeGreaterThanOrEqual(-0.85 * 200 - 1e-6);
			expect(view.liquid!.toY).toBeLessThanOrEqual(-0.8 * 200 + 1e-6);
			expect(view.liquid!.fromY).toBe(0);
			expect(view.tip).toEqual({ from: 0, to: 1 });
		}
	);
	test('the first titrant that is drawn stands at the lower end of the tip', () => {
		const seen = { ...filledToSeal(0.05, 0.17), tipLiquid: 0.05 / 0.17 };
		const view = syringeView(seen, { ...level, tipVolumeMl: 0.17 });
		expect(view.liquid).toBeNull();
		expect(view.tip.from).toBe(0);
		expect(view.tip.to).toBeCloseTo(0.05 / 0.17, 6);
	});
	test('turned tip-up the air is at the tip and the liquid on the seal', () => {
		const view = syringeView(filledToSeal(1, 0.17), {
			...level,
			tipVolumeMl: 0.17,
			isTurned: true
		});
		expect(view.liquid!.toY).toBeCloseTo(view.sealY, 6);
		expect(view.liquid!.fromY).toBeCloseTo(0, 6);
		expect(view.tip.to - view.tip.from).toBeCloseTo(0, 6);
	});
	test('rings are lines at eye level; from above, seal and line seem to stand higher on the print', () => {
		const seen = filledToSeal(0.5, 0.17);
		const flat = syringeView(seen, { ...level, tipVolumeMl: 0.17 });
		const above = syringeView(seen, { ...level, tipVolumeMl: 0.17, eyeDegrees: 20 });
		expect(flat.ring).toBe(0);
		expect(above.ring).toBeGreaterThan(1);
		expect(above.sealY).toBeLessThan(flat.sealY);
		// tan 20° times half a bore of 4.6 mm at 57 mm for 1 mL (common practice, no source).
		expect(apparentShiftMl(20)).toBeCloseTo((0.36397 * 2.3) / 57, 5);
		expect(apparentShiftMl(-20)).toBeCloseTo(-apparentShiftMl(20), 9);
	});
	test('no liquid, no path', () => {
		expect(tubeLiquidPath(10, 0, 0, 2)).toBe('');
		expect(tipPath(0.4, 0.4)).toBe('');
	});
});

describe('drops', () => {
	test('a drop of 0.021 mL is 1.71 mm in radius', () => {
		// Volume of a sphere: 4/3 π r³.
		expect(dropRadiusMm(0.021)).toBeCloseTo(1.711, 3);
	});
	test('half the time of a free fall is a quarter of the way', () => {
		expect(fallenShare(0.5)).toBe(0.25);
		expect(fallenShare(-1)).toBe(0);
		expect(fallenShare(2)).toBe(1);
	});
	test('nothing hangs, nothing is drawn', () => {
		expect(hangingDropPath(0, 0, 2)).toBe('');
		expect(hangingDropPath(5, 0.5, 2)).toMatch(/^M.*Z$/);
	});
});

const channel = fc.double({ min: 0.02, max: 1, noNaN: true });
const colour: fc.Arbitrary<Srgb> = fc.record({ r: channel, g: channel, b: channel });
const white: Srgb = { r: 1, g: 1, b: 1 };

describe('paint', () => {
	test('the whole way shows the colour itself, no way at all the light', () => {
		fc.assert(
			fc.property(colour, (liquid) => {
				const whole = shade(liquid, white, 1);
				expect(whole.r).toBeCloseTo(liquid.r, 6);
				expect(whole.b).toBeCloseTo(liquid.b, 6);
				expect(shade(liquid, white, 0).g).toBeCloseTo(1, 6);
			})
		);
	});
	test('a shorter way is never darker', () => {
		fc.assert(
			fc.property(colour, fc.double({ min: 0, max: 1, noNaN: true }), (liquid, way) => {
				expect(shade(liquid, white, way).g).toBeGreaterThanOrEqual(liquid.g - 1e-9);
			})
		);
	});
	test('the flat middle of a vial shows the full way; its wall is paler', () => {
		expect(vialShades.at(-1)!.way).toBe(1);
		expect(vialShades[0]!.way).toBeLessThan(0.3);
	});
	test('the light of the night is #e7e7e7, and the liquid scales with it', () => {
		expect(cssColour(white, NIGHT_GLOW)).toBe('rgb(231,231,231)');
		expect(cssColour({ r: 0.5, g: 0, b: 1 })).toBe('rgb(128,0,255)');
	});
});

describe('the vial', () => {
	const size = { width: 140, height: 150, fullMl: 9 };
	test('the liquid grows in proportion to its volume and never over the rim', () => {
		expect(depthOf(size, 4) / depthOf(size, 2)).toBeCloseTo(2, 6);
		expect(depthOf(size, 1000) + BASE).toBeLessThan(size.height);
	});
	test('a swirl stays within 4 degrees and starts from rest', () => {
		expect(swirlPose(0, 140)).toEqual({ degrees: 0, slope: 0 });
		for (let ms = 0; ms < 1000; ms += 7)
			expect(Math.abs(swirlPose(ms, 140).degrees)).toBeLessThanOrEqual(4);
	});
	test('the surface is late by 80 ms', () => {
		const early = swirlPose(1, 140);
		// The lagging part is still at rest, so the slope is that of the vial alone.
		expect(early.slope).toBeCloseTo(Math.tan((early.degrees * Math.PI) / 180) * 70, 6);
	});
	test('a plume that has mixed is not seen; it sinks and widens on the way', () => {
		expect(plumeBlobs(0, 140, 80, 0).every((blob) => blob.opacity === 0)).toBe(true);
		const [fresh] = plumeBlobs(1, 140, 80, 0);
		const [later] = plumeBlobs(0.3, 140, 80, 0);
		expect(later!.y).toBeGreaterThan(fresh!.y);
		expect(later!.radius).toBeGreaterThan(fresh!.radius);
		expect(later!.opacity).toBeLessThan(fresh!.opacity);
	});
});

describe('a white cloud in the liquid', () => {
	const light = { r: 1, g: 1, b: 1 };
	/** Saturation of the HSV model, IEC 61966-2-1 values. */
	const saturation = ({ r, g, b }: Srgb) => 1 - Math.min(r, g, b) / Math.max(r, g, b);
	const wineRed = { r: 0.62, g: 0.16, b: 0.4 };

	test('stands out against the light behind it, the more the thicker it is', () => {
		const away = [0, 0.1, 0.3, 0.6, 0.9].map((haze) =>
			colourDistance(clouded(light, light, haze), light)
		);
		expect(away[0]).toBe(0);
		expect(away).toEqual([...away].sort((a, b) => a - b));
		// A cloud of the leaflet's dose of base scatters more than half of the light: seen at a glance.
		expect(colourDistance(clouded(light, light, 0.6), light)).toBeGreaterThan(2 * NOTICEABLE);
		// Grey, not coloured.
		expect(saturation(clouded(light, light, 0.9))).toBeLessThan(1e-9);
	});
	test('makes a colour paler, and leaves it as it was where there is none', () => {
		const pale = clouded(wineRed, light, 0.6);
		expect(saturation(pale)).toBeLessThan(0.9 * saturation(wineRed));
		expect(pale.g).toBeGreaterThan(wineRed.g);
		expect(clouded(wineRed, light, 0, 0.5)).toEqual(shade(wineRed, light, 0.5));
	});
	test('shows no light that the lamp does not give', () => {
		const red = { r: 1, g: 0, b: 0 };
		expect(clouded(red, red, 0.7)).toMatchObject({ g: 0, b: 0 });
	});
});
