import { describe, expect, it } from 'vitest';
import {
	alkalinityOfProbeTitration,
	molPerKgFromDkh,
	type ProbeAlkalinityOptions,
	type ProbeFlag
} from '../../src/lib/chemistry';
import dickson from '../reference/data/dickson-1981-table-1.json';
import { chanceOf } from '../studies/chance';
import { density, simulatedReadings, titration, type Simulated } from './probe-readings';

type SetOn = NonNullable<ProbeAlkalinityOptions['meterSetOn']>;
type Vessel = 'closed' | 'open';
const MADE = 40;

/**
 * Titrations by as many meters, each set on two buffers: zero and slope are drawn as such meters have them
 * (judgement, see LIMITS.asSet), water, reading and volume too.
 */
function made(
	vessel: Vessel,
	more: Partial<Simulated>,
	{ curves = MADE, meterSetOn = 'buffers' }: { curves?: number; meterSetOn?: SetOn | 'notSet' } = {}
) {
	const { normal, uniform } = chanceOf(13);
	return Array.from({ length: curves }, () => {
		const alkalinityDkh = 6 + 5 * uniform();
		const points = simulatedReadings({
			alkalinityDkh,
			ph: 7.9 + 0.5 * uniform(),
			offsetPh: 0.05 + 0.032 * normal(),
			slope: 1 + 0.012 * normal(),
			phSd: 0.007,
			decimals: 2,
			addedSdMl: 0.005,
			reach: 1.5,
			loss: vessel === 'open' ? 0.08 : 0,
			normal,
			...more
		});
		const found = alkalinityOfProbeTitration(points, {
			...titration,
			vessel,
			...(meterSetOn === 'notSet' ? {} : { meterSetOn })
		});
		const foundMolPerKg = found.value?.alkalinityMolPerKg ?? Number.NaN;
		return {
			...found,
			offPercent: 100 * (foundMolPerKg / molPerKgFromDkh(alkalinityDkh, density) - 1)
		};
	});
}
const ofMeter = ({ flags }: { flags: readonly ProbeFlag[] }) =>
	flags.find(({ id }) => id === 'notAsSet' || id === 'badSlope');
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const weak = (acidFactor: number) => ({ acidFactor, reach: 1.5 / Math.min(1, acidFactor) });

describe('readings that hold next to nothing', () => {
	const flagsOf = (typed: string, vessel: Vessel) =>
		alkalinityOfProbeTitration(
			typed.split('; ').map((pair) => {
				const [addedMl, ph] = pair.split(' ').map(Number);
				return { addedMl: addedMl!, ph: ph! };
			}),
			{
				...{ sampleVolumeMl: 100, acidMolPerL: 0.1, salinity: 35, temperatureC: 25, vessel },
				meterSetOn: 'buffers'
			}
		).flags;
	const late = '2.7 3.49; 2.8 3.42; 2.9 3.33; 3.0 3.26; 3.2 3.14';
	it.each<Vessel>(['closed', 'open'])('%s: are refused where all come late', (vessel) => {
		expect(flagsOf(late, vessel)[0]).toMatchObject({ id: 'notSolved', weight: 'unusable' });
	});
	it.each<Vessel>(['closed', 'open'])('%s: say nothing of meter or acid', (vessel) => {
		for (const typed of [late, '0 8.1; 2.7 3.45; 2.8 3.39; 2.9 3.32; 3.0 3.26; 3.2 3.14'])
			expect(flagsOf(typed, vessel).map(({ id }) => id)).not.toContain('notAsSet');
	});
});

describe('a meter that was set on two buffers', () => {
	it.each<Vessel>(['closed', 'open'])(
		'%s: of 200 sound curves at most 2 in 100 are doubted',
		(vessel) => {
			const doubted = made(vessel, {}, { curves: 200 }).filter(ofMeter);
			expect(doubted.length).toBeLessThanOrEqual(4);
		},
		60_000
	);
	// Dickson 1981 (Deep-Sea Res. 28A:609), table 1: pH on the free scale, worked out.
	it.each<Vessel>(['closed', 'open'])('%s: a published table is not doubted', (vessel) => {
		const points = dickson.phFreeByAcidG.map(([acidG, ph]) => ({ addedMl: acidG!, ph: ph! }));
		expect(
			alkalinityOfProbeTitration(points, {
				sampleMassG: dickson.sampleG,
				acidMolPerL: dickson.acidMolPerKg,
				acidDensityKgPerL: 1,
				acidMatrix: 'sodiumChloride',
				salinity: 35,
				temperatureC: 25,
				vessel,
				meterSetOn: 'buffers'
			}).flags
		).toEqual([]);
	});

	// How often it shows, of 100, and how far it moves the value, in per cent.
	it.each<[Vessel, string, Partial<Simulated>, [number, number], [number, number]]>([
		['closed', 'acid a quarter too weak', weak(0.75), [85, 100], [32, 34]],
		['open', 'acid a quarter too weak', weak(0.75), [65, 100], [32, 34]],
		['closed', 'acid a fifth too weak', weak(0.8), [70, 100], [24, 26]],
		['closed', 'acid a quarter too strong', weak(1.25), [60, 100], [-21, -19]],
		['open', 'acid a quarter too strong', weak(1.25), [50, 100], [-21, -19]],
		['closed', 'acid an eighth too weak', weak(0.88), [5, 40], [13, 14.5]],
		['closed', 'acid an eighth too strong', weak(1.12), [2, 40], [-11.5, -10]],
		['closed', 'a drift of 0.13', { driftPh: 0.13 }, [65, 100], [-0.3, 0.3]],
		['open', 'a drift of 0.13', { driftPh: 0.13 }, [65, 100], [-2, -0.7]],
		['open', 'a drift of 0.2', { driftPh: 0.2 }, [95, 100], [-3, -1.5]],
		['open', 'a drift of −0.2', { driftPh: -0.2 }, [95, 100], [0.7, 2]],
		['closed', 'a slope of 88 %', { slope: 0.88 }, [100, 100], [-0.3, 0.3]],
		['open', 'a slope of 88 %', { slope: 0.88 }, [70, 100], [-4, -1.5]]
	])('%s, %s', (vessel, _, more, shows, by) => {
		const all = made(vessel, more);
		const share = (100 * all.filter(ofMeter).length) / all.length;
		expect(share).toBeGreaterThanOrEqual(shows[0]);
		expect(share).toBeLessThanOrEqual(shows[1]);
		const off = mean(all.map(({ offPercent }) => offPercent));
		expect(off).toBeGreaterThan(by[0]);
		expect(off).toBeLessThan(by[1]);
	});

	it('a slope of 88 % is called a slope, and stands first', () => {
		for (const { flags } of made('closed', { slope: 0.88 }, { curves: 20 })) {
			expect(flags[0]?.sentence).toMatch(/slope.* 8[789] %/u);
			expect(flags[0]?.id).toBe('badSlope');
		}
	});
	it('drift and acid are told apart where the readings tell them apart', () => {
		const named = (more: Partial<Simulated>) =>
			made('closed', more).flatMap((each) => {
				const { sentence = '' } = ofMeter(each) ?? {};
				return /looks most like the (\w+)/u.exec(sentence)?.[1] ?? [];
			});
		const drifted = named({ driftPh: 0.3 });
		expect(drifted.length).toBeGreaterThan(0.8 * MADE);
		expect(new Set(drifted)).toEqual(new Set(['drift']));
		const weaker = named(weak(0.75));
		expect(weaker.length).toBeGreaterThan(0.7 * MADE);
		expect(new Set(weaker)).toEqual(new Set(['acid']));
	});
	it('where they cannot be, each is named with its size', () => {
		const flags = made('open', weak(0.75)).flatMap((each) => ofMeter(each) ?? []);
		const acid = mean(flags.map(({ figures }) => figures['acidOverTyped'] ?? Number.NaN));
		expect(Math.abs(acid - 0.75)).toBeLessThan(0.06);
		for (const { sentence } of flags) {
			expect(sentence).toMatch(
				/the meter is off .*; or it drifted by about 0\.\d pH; or the acid/u
			);
			expect(sentence).toMatch(
				/about \d+ % weaker than was typed, and the water holds about \d+ % less/u
			);
			expect(sentence).not.toMatch(/looks most like/u);
		}
	});
	it('a known solution that comes out right leaves the acid out of it', () => {
		const known = {
			alkalinityMolPerKg: molPerKgFromDkh(8, density),
			standardUncertaintyMolPerKg: 5e-5
		};
		const judged = (more: Partial<Simulated>) =>
			alkalinityOfProbeTitration(
				simulatedReadings({ alkalinityDkh: 8, offsetPh: 0.05, decimals: 2, ...more }),
				{ ...titration, vessel: 'closed', meterSetOn: 'buffers', known }
			).flags;
		expect(ofMeter({ flags: judged({ driftPh: 0.25 }) })?.sentence).not.toContain('acid');
		expect(judged(weak(0.75))[0]).toMatchObject({ id: 'acidStrength' });
	});
	it('is not doubted for that where it was not set', () => {
		const all = made('open', weak(0.75), { curves: 20, meterSetOn: 'notSet' });
		expect(all.filter(ofMeter)).toEqual([]);
	});
	// In seawater of salinity 35 at 25 °C pH on the total scale lies 0.108 below the free one: log10(1 + S/K)
	// with 0.0282 mol/kg of sulfate and K of 0.100 mol/kg (Dickson 1990, from memory).
	it('one that was set on buffers in seawater shows pH on the total scale', () => {
		const offsetPh = -0.108;
		const doubted = (meterSetOn: SetOn) =>
			made('closed', { offsetPh, slope: 1 }, { curves: 20, meterSetOn }).filter(ofMeter).length;
		expect(doubted('seawaterBuffers')).toBe(0);
		expect(doubted('buffers')).toBe(20);
	});
});
