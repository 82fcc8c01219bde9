import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater,
	chelationConstants,
	chelationStateOf,
	fillChelationVessel,
	preparedVessel,
	settlePrecipitate,
	titrateWithEdta,
	type ChelationVessel,
	type EdtaTitration
} from '../../src/lib/chemistry';
import { deed, sample, wait } from './chelation-fuzz';
import { calcium, strongBase, total } from './chelation-titrations';

const { hydroxide } = chelationConstants;
const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const near = (found: number, wanted: number, relative: number, floor = 1e-18) =>
	expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + floor);

const shareOf = ({ occludedCalciumMol, calciumMol }: ChelationVessel) =>
	occludedCalciumMol / calciumMol;
const without = { hydroxide: { ...hydroxide, carbonateMost: 0 } };
/** Share of the calcium that carbonate takes beside what the hydroxide carries down. */
function lost(minutes: number, different: Partial<EdtaTitration> = {}): number {
	const stood = { ...calcium, ...different, waitSeconds: 60 * minutes };
	return shareOf(preparedVessel(stood)) - shareOf(preparedVessel({ ...stood, constants: without }));
}

describe('calcium lost to carbonate while the vial stands (common practice, no source: 1 to 3 % for long standing)', () => {
	it('is nothing in the first minutes, about a hundredth in ten, under three in thirty', () => {
		expect(lost(4)).toBe(0);
		expect(lost(10)).toBeGreaterThan(0.007);
		expect(lost(10)).toBeLessThan(0.011);
		expect(lost(30)).toBeGreaterThan(0.024);
		expect(lost(30)).toBeLessThan(0.03);
	});

	it('is never more than the constant says, however long', () => {
		const open =
			1 - shareOf(preparedVessel({ ...calcium, waitSeconds: Infinity, constants: without }));
		near(lost(Infinity) / open, 1 - Math.exp(-hydroxide.carbonateMost), 1e-9);
	});

	it('begins later where the sample is diluted or EDTA holds most of the calcium', () => {
		expect(lost(30, { water: { volumeMl: 25 } })).toBeLessThan(lost(30) / 20);
		expect(lost(30, { edtaBeforeMl: 0.95 })).toBe(0);
		expect(lost(120, { edtaBeforeMl: 2 })).toBe(0);
	});

	it('is nothing where there is no magnesium, and less than a ten-thousandth in ammonia buffer', () => {
		const salt = { matrix: 'sodiumChloride', calciumMolPerKg: 0.01 } as const;
		expect(shareOf(preparedVessel({ ...calcium, ...salt, waitSeconds: 1800 }))).toBe(0);
		expect(shareOf(preparedVessel({ ...total, waitSeconds: 1800 }))).toBeLessThan(1e-4);
	});

	it('stays lost where the hydroxide dissolves again', () => {
		const kept = (constants?: EdtaTitration['constants']) => {
			const stood = preparedVessel({
				...calcium,
				waitSeconds: 1800,
				...(constants && { constants })
			});
			// As disodium salt, more of it than of all metals.
			const acid = addEdta(stood, { volumeMl: 5, molPerL: 0.2 });
			const dissolved = settlePrecipitate(acid, Infinity);
			expect(dissolved.solidMagnesiumMol).toBeLessThan(1e-9 * dissolved.magnesiumMol);
			return { before: shareOf(stood), after: shareOf(dissolved) };
		};
		const [both, hydroxideAlone] = [kept(), kept(without)];
		expect(hydroxideAlone.after).toBe(0);
		near(1 - both.after, (1 - both.before) / (1 - hydroxideAlone.before), 1e-12);
		expect(both.after).toBeGreaterThan(0.024);
	});
});

describe('a wait', () => {
	it('of ten minutes is the same as sixty of ten seconds', () => {
		const start = preparedVessel({ ...calcium, waitSeconds: 0 });
		let often = start;
		for (let i = 0; i < 60; i++) often = settlePrecipitate(often, 10);
		near(often.occludedCalciumMol, settlePrecipitate(start, 600).occludedCalciumMol, 1e-12);
	});

	it('is the same however it is cut, while solid forms, rests or dissolves', () => {
		fc.assert(
			fc.property(
				fc.tuple(number(0, 3), number(0, 1), number(0, 3), number(0, 3000)),
				fc.array(number(0, 600), { minLength: 2, maxLength: 12 }),
				([beforeMl, baseMl, afterMl, stoodSeconds], cuts) => {
					const edta = (vessel: ChelationVessel, volumeMl: number) =>
						addEdta(vessel, { volumeMl, molPerL: 0.05 });
					const based = addBase(edta(fillChelationVessel(calcium), beforeMl), {
						volumeMl: baseMl,
						...strongBase
					});
					const start = edta(settlePrecipitate(based, stoodSeconds), afterMl);
					const seconds = cuts.reduce((sum, cut) => sum + cut, 0);
					const once = settlePrecipitate(start, seconds);
					const often = cuts.reduce(settlePrecipitate, start);
					near(often.solidMagnesiumMol, once.solidMagnesiumMol, 1e-9);
					near(often.standingMolSPerL, once.standingMolSPerL, 1e-9, 1e-12);
					near(often.occludedCalciumMol, once.occludedCalciumMol, 1e-9);
				}
			),
			{ numRuns: 100 }
		);
	});

	it('is the same where a titration says it and where hands do it', () => {
		const [point] = titrateWithEdta({ ...calcium, waitSeconds: 900 }, [0.5]);
		let vessel = addBase(fillChelationVessel(calcium), calcium.base!);
		vessel = settlePrecipitate(addMetalDye(vessel, calcium.indicator!), 900);
		vessel = settlePrecipitate(addEdta(vessel, { volumeMl: 0.5, molPerL: 0.05 }), 900);
		expect(chelationStateOf(vessel).occludedCalciumMolPerL).toBe(point!.occludedCalciumMolPerL);
		expect(point!.occludedCalciumMolPerL * point!.volumeMl).toBeGreaterThan(
			1000 * vessel.calciumMol * 0.025
		);
	});

	it('leaves no less than no calcium and takes none that is not there, whatever the constants', () => {
		const constants = fc.record({
			occlusionLPerMol: number(0, 1e6),
			dissolvingSeconds: number(1e-9, 1e9),
			carbonateInductionMolSPerL: number(0, 100),
			carbonateGrowthMolSPerL: number(1e-9, 1e9),
			carbonateMost: number(0, 20)
		});
		const deeds = fc.array(fc.oneof(deed, wait), { maxLength: 12 });
		fc.assert(
			fc.property(sample, constants, deeds, (water, odd, poured) => {
				const start = fillChelationVessel({
					...water,
					constants: { hydroxide: { ...hydroxide, ...odd } }
				});
				let standing = 0;
				for (const vessel of poured.map((_, i) =>
					poured.slice(0, i + 1).reduce((there, each) => each(there), start)
				)) {
					expect(vessel.occludedCalciumMol).toBeGreaterThanOrEqual(0);
					expect(vessel.occludedCalciumMol).toBeLessThanOrEqual(vessel.calciumMol);
					expect(vessel.standingMolSPerL).toBeGreaterThanOrEqual(standing);
					standing = vessel.standingMolSPerL;
				}
			}),
			{ numRuns: 200 }
		);
	});

	it('beside hard water poured in later goes on without a jump', () => {
		const stood = preparedVessel({ ...calcium, waitSeconds: 1800 });
		const hard = addPlainWater(stood, { volumeMl: 5, calciumMolPerL: 0.01 });
		near(settlePrecipitate(hard, 1e-6).occludedCalciumMol, stood.occludedCalciumMol, 1e-6);
	});
});

describe('constants that cannot be', () => {
	it.each([
		['carbonateInductionMolSPerL', -1],
		['carbonateGrowthMolSPerL', 0],
		['carbonateMost', Number.NaN]
	])('%s is named with its range', (field, wrong) => {
		const titrated = () =>
			fillChelationVessel({
				...calcium,
				constants: { hydroxide: { ...hydroxide, [field]: wrong } }
			});
		expect(titrated).toThrow(RangeError);
		expect(titrated).toThrow(
			new RegExp(`^constants\\.hydroxide\\.${field} must be between .*found ${wrong}`)
		);
	});
});
