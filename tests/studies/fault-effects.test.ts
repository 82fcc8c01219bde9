import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { referenceReading } from '../../src/lib/chemistry';
import {
	effectsAtDkh,
	endPointEffects,
	matrixEffectOf,
	workedOutAtDkh
} from '../../src/lib/judgement';
import { ALKALINITIES, studyEffects } from './end-effects';

/** Titrations drop by drop, on a machine that may be busy. */
const SLOW_MS = 120_000;
const FILE = 'src/lib/judgement/catalogue/end-point-effects.ts';

/** The table as a file; `WRITE_STUDY=1 npx vitest run --project unit tests/studies/fault-effects` writes it. */
function fileOf(effects: ReturnType<typeof studyEffects>): string {
	return `/**
 * What moves the end of a titration and is neither a share of the value nor a volume, dKH: change of
 * the value that the leaflet gives, against a clean hand in ordinary seawater of the same content,
 * over the house kits and three alkalinities. Written by tests/studies/fault-effects.test.ts, which
 * finds it on the practice bench and compares it again; not to be changed by hand.
 */
export type EndPointEffect = {
	mean: number;
	/** Spread over kits and alkalinities. */
	sd: number;
	least: number;
	most: number;
	/** Mean over the kits at each alkalinity of \`effectsAtDkh\`. */
	byDkh: readonly number[];
};

export const effectsAtDkh: readonly number[] = ${JSON.stringify(ALKALINITIES)};

export const endPointEffects = ${JSON.stringify(effects)} as const satisfies Record<string, EndPointEffect>;
`;
}

describe('effects on the end that are found on the bench', () => {
	it(
		'stand in the table as the bench gives them today',
		() => {
			const found = studyEffects();
			if (process.env['WRITE_STUDY']) writeFileSync(FILE, fileOf(found));
			console.log(
				Object.entries(found)
					.map(
						([id, { mean, sd, least, most }]) =>
							`${id.padEnd(28)} ${[mean, sd, least, most].map((each) => each.toFixed(3).padStart(7)).join(' ')}`
					)
					.join('\n')
			);
			expect(effectsAtDkh).toEqual(ALKALINITIES);
			expect(Object.keys(endPointEffects)).toEqual(Object.keys(found));
			// The last printed digit, as another machine may round it.
			for (const [id, row] of Object.entries(found)) {
				const listed = endPointEffects[id as keyof typeof endPointEffects];
				for (const figure of ['mean', 'sd', 'least', 'most'] as const)
					expect(Math.abs(listed[figure] - row[figure]), `${id} ${figure}`).toBeLessThan(0.0015);
				row.byDkh.forEach((each, i) =>
					expect(Math.abs((listed.byDkh[i] ?? NaN) - each), id).toBeLessThan(0.0015)
				);
			}
		},
		SLOW_MS
	);

	it('lie where the textbook has them', () => {
		const { stillVial, shakenVial, bicarbonateInPurified, carbonateInPurified, indicatorDoubled } =
			endPointEffects;
		// Carbon dioxide kept makes the end come early, driven off late: textbook.
		expect(stillVial.mean).toBeLessThan(0);
		expect(shakenVial.mean).toBeGreaterThan(0);
		// Plain water reads low, and carbonate brings half the carbon: it reads above bicarbonate.
		expect(bicarbonateInPurified.mean).toBeLessThan(-0.1);
		expect(carbonateInPurified.mean).toBeGreaterThan(bicarbonateInPurified.mean);
		expect(Math.abs(indicatorDoubled.mean)).toBeLessThan(0.04);
	});
});

describe('what a sound kit reads on a known solution', () => {
	const kinds = (['purified', 'sodiumChloride'] as const).flatMap((matrix) =>
		(['bicarbonate', 'carbonate'] as const).map((madeWith) => ({ matrix, madeWith }))
	);

	it.each(kinds)(
		'stands in the table as chemistry works it out: $madeWith, $matrix',
		({ matrix, madeWith }) => {
			workedOutAtDkh.forEach((alkalinityDkh) => {
				const worked = referenceReading({
					alkalinityDkh,
					matrix,
					salinity: matrix === 'purified' ? 0 : 35,
					temperatureC: 25,
					madeWith
				});
				const listed = matrixEffectOf(matrix, alkalinityDkh, madeWith);
				// The last printed digit.
				expect(Math.abs(listed.value - worked.differenceDkh)).toBeLessThan(0.0006);
				expect(Math.abs(listed.standardUncertainty - worked.standardUncertaintyDkh)).toBeLessThan(
					0.0006
				);
			});
		},
		SLOW_MS
	);

	it('what clean hands find on the bench lies within its expanded uncertainty', () => {
		const found = {
			purified: {
				bicarbonate: endPointEffects.bicarbonateInPurified,
				carbonate: endPointEffects.carbonateInPurified
			},
			sodiumChloride: {
				bicarbonate: endPointEffects.bicarbonateInSodiumChloride,
				carbonate: endPointEffects.carbonateInSodiumChloride
			}
		};
		for (const { matrix, madeWith } of kinds)
			effectsAtDkh.forEach((dkh, i) => {
				const { value, standardUncertainty } = matrixEffectOf(matrix, dkh, madeWith);
				const onBench = found[matrix][madeWith].byDkh[i] ?? NaN;
				expect(Math.abs(onBench - value), `${matrix} ${madeWith} ${dkh}`).toBeLessThan(
					2 * standardUncertainty
				);
			});
	});

	it('is nothing in seawater, and lies between the contents that were worked out', () => {
		expect(matrixEffectOf('seawater', 8)).toEqual({ value: 0, standardUncertainty: 0 });
		const at = (dkh: number) => matrixEffectOf('purified', dkh).value;
		expect(at(6.5)).toBeCloseTo((at(5) + at(8)) / 2, 9);
		expect(at(30)).toBe(at(12));
	});

	it('refuses a content that is no content', () => {
		expect(() => matrixEffectOf('purified', Number.NaN)).toThrow(/nominalDkh/);
	});
});
