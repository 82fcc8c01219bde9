import { describe, expect, it } from 'vitest';
import {
	calibrateKit,
	createBench,
	curveOf,
	ledgerOf,
	planOf,
	PlanSchema,
	runHands,
	trueValueOf,
	type BenchState,
	type Ledger,
	type Plan
} from '../../src/lib/bench';
import { houseCalciumKit, houseHardnessKit, valueFromMark, type Kit } from '../../src/lib/kits';
import type { SlipKind } from '../../src/lib/observation';
import { lineOf, slipOf, truthOf } from './house';

type Played = {
	plan?: Partial<Plan>;
	truth?: Parameters<typeof truthOf>[0];
	slips?: readonly SlipKind[];
	/** What the learner counted of a refill, where that is not what their hands counted. */
	refilledMl?: number;
};

function played(kit: Kit, { plan = {}, truth: different, slips = [], refilledMl }: Played = {}) {
	const truth = truthOf(different);
	const run = runHands(createBench({ kit, truth, seed: 2 }), PlanSchema.parse(plan));
	const { value } = valueFromMark(kit, {
		markMl: run.marks.sealMl ?? run.marks.lineMl,
		refilledMl: refilledMl ?? run.refilledMl,
		sampleVolumeMl: run.sampleVolumeMl
	});
	const declared = { marks: run.marks, value };
	const ledger = ledgerOf(
		run.state,
		declared,
		slips.map((kind) => slipOf(kind, kind === 'refillForgotten' ? { sizeMl: -run.refilledMl } : {}))
	);
	return { ledger, value, state: run.state, error: value - trueValueOf(truth.water, kit) };
}
const sumOf = (ledger: Ledger) => ledger.lines.reduce((sum, { amount }) => sum + amount, 0);
const dropWorth = ({ conversion, delivery }: Kit) =>
	conversion.kind === 'perMl' ? conversion.valuePerMl * delivery.dropMl : Number.NaN;

function read({ delivery }: BenchState): { sealMl: number } {
	if (delivery.by !== 'syringe') throw new Error('a syringe was expected');
	return { sealMl: Number(delivery.syringe.sealMl.toFixed(3)) };
}

const kits = [houseCalciumKit, houseHardnessKit];

describe('the ledger of a titration with EDTA', () => {
	const cases: [string, Kit, Played][] = [
		['clean', houseCalciumKit, {}],
		['clean', houseHardnessKit, {}],
		['stopped early', houseCalciumKit, { plan: { dropsPastEnd: -2 }, slips: ['stoppedAtFlash'] }],
		['tap water', houseHardnessKit, { plan: { rinseSampler: 'tap' }, slips: ['wareNotRinsed'] }],
		['old base', houseCalciumKit, { truth: { reagents: { base: { carbonatedShare: 0.3 } } } }],
		['blocked', houseHardnessKit, { truth: { water: { blockingMicromolPerL: 3 } } }]
	];

	it.each(cases)('%s, %o: adds up, with nothing unnamed', (_name, kit, how) => {
		const { ledger, error } = played(kit, how);
		expect(ledger).toMatchObject({ unit: kit.unit, analyte: kit.analyte });
		expect(sumOf(ledger)).toBeCloseTo(error, 9);
		expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(1e-9);
		expect(Math.abs(lineOf(ledger, 'resolution'))).toBeLessThan(dropWorth(kit));
		expect(Math.abs(lineOf(ledger, 'method'))).toBeLessThan(dropWorth(kit) / 2);
	});

	it('gives two drops too few their worth', () => {
		const { ledger } = played(houseCalciumKit, {
			plan: { dropsPastEnd: -2 },
			slips: ['stoppedAtFlash']
		});
		const drops = lineOf(ledger, 'slip-stoppedAtFlash') / dropWorth(houseCalciumKit);
		expect(drops).toBeLessThan(-1.5);
		expect(drops).toBeGreaterThan(-2.6);
	});

	it('lays what an old base did at the base, not at the eye', () => {
		const { ledger, error } = played(houseCalciumKit, {
			truth: { reagents: { base: { carbonatedShare: 0.3 } } }
		});
		expect(Math.abs(lineOf(ledger, 'baseStrength') - error)).toBeLessThan(
			0.5 * dropWorth(houseCalciumKit)
		);
		expect(ledger.lines.map(({ id }) => id)).not.toContain('eye');
	});

	it('lays base that hands were short of at the doses; so it is done again by the same hands', () => {
		const { ledger, value, state, error } = played(houseCalciumKit, {
			plan: { extraPhReagent: -4 }
		});
		const more = error - played(houseCalciumKit).error;
		expect(more).toBeGreaterThan(0.7 * dropWorth(houseCalciumKit));
		// Where a whole drop falls moves the difference of two tests by a drop at most.
		expect(Math.abs(lineOf(ledger, 'phReagentDoses') - more)).toBeLessThan(
			dropWorth(houseCalciumKit)
		);
		expect(Math.abs(lineOf(ledger, 'method'))).toBeLessThan(dropWorth(houseCalciumKit) / 2);
		const { sealMl } = read(state);
		const plan = planOf(state, { marks: { sealMl }, value }, []);
		expect(plan).toMatchObject({ extraPhReagent: -4, extraIndicator: 0 });
	});

	it('gives a weak titrant and a buffer that is off their shares', () => {
		// A tenth weaker takes 1/0.9 as much: all of the value and of the leaflet's offset.
		const weak = played(houseCalciumKit, { truth: { titrant: { strengthFactor: 0.9 } } });
		expect(lineOf(weak.ledger, 'titrantStrength')).toBeCloseTo((421.7 + 6.8) / 9, -0.5);
		const low = played(houseHardnessKit, {
			truth: { reagents: { ammoniaBuffer: { phOff: -1 } } }
		});
		expect(lineOf(low.ledger, 'bufferPh')).toBeLessThan(-dropWorth(houseHardnessKit));
	});

	it('marks mixed at each of two fillings cost the tip twice, once where the refill was counted right', () => {
		const tip = 0.17 * 40;
		const by = { plan: { fillBy: 'line' as const }, slips: ['mixedMarks' as const] };
		const twice = played(houseHardnessKit, by).ledger;
		expect(lineOf(twice, 'slip-mixedMarks')).toBeCloseTo(-2 * tip, 1);
		expect(Math.abs(lineOf(twice, 'unnamed'))).toBeLessThan(1e-9);
		const once = played(houseHardnessKit, { ...by, refilledMl: 1.17 }).ledger;
		expect(lineOf(once, 'slip-mixedMarks')).toBeCloseTo(-tip, 1);
		expect(Math.abs(lineOf(once, 'unnamed'))).toBeLessThan(1e-9);
	});

	it('fillings beside the full mark cost what they are off, each one that was counted as full', () => {
		const off = 0.04 * 40;
		for (const sign of [1, -1]) {
			const by = { plan: { fillOffMl: 0.04 * sign }, slips: ['mixedMarks' as const] };
			const twice = played(houseHardnessKit, by).ledger;
			expect(lineOf(twice, 'slip-mixedMarks')).toBeCloseTo(-2 * sign * off, 1);
			expect(Math.abs(lineOf(twice, 'unnamed'))).toBeLessThan(1e-9);
			const once = played(houseHardnessKit, { ...by, refilledMl: 1 + 0.04 * sign }).ledger;
			expect(lineOf(once, 'slip-mixedMarks')).toBeCloseTo(-sign * off, 1);
			expect(Math.abs(lineOf(once, 'unnamed'))).toBeLessThan(1e-9);
		}
	});

	it('a filling forgotten costs all that it held', () => {
		const { ledger } = played(houseHardnessKit, { refilledMl: 0, slips: ['refillForgotten'] });
		expect(lineOf(ledger, 'slip-refillForgotten')).toBeCloseTo(-40, 0);
		expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(1e-9);
	});
});

describe('the curve of a titration with EDTA', () => {
	it.each(kits)('$name: pM rises, steepest at the end, which lies just before the stop', (kit) => {
		const { state } = played(kit);
		const { readoutName, points, endMl, stoppedMl } = curveOf(state);
		expect(readoutName).toBe('pM');
		const rises = points.slice(1).map((point, i) => point.readout - (points[i]?.readout ?? 0));
		for (const [i, rise] of rises.entries())
			if ((points[i]?.addedMl ?? 0) < (endMl ?? 0)) expect(rise).toBeGreaterThan(0);
		const steepestMl = points[rises.indexOf(Math.max(...rises))]?.addedMl ?? Number.NaN;
		// Blue to the eye comes after: by up to 4 % at pH 10, where sodium makes the end of magnesium shallow.
		const after = (endMl ?? Number.NaN) / steepestMl - 1;
		expect(after).toBeGreaterThan(-0.01);
		expect(after).toBeLessThan(0.04);
		expect(stoppedMl).toBeGreaterThanOrEqual(endMl ?? Number.NaN);
		expect(stoppedMl - (endMl ?? Number.NaN)).toBeLessThan(1.5 * kit.delivery.dropMl);
	});
});

it.each(kits)('$name: its leaflet is a straight line over the range of tanks', (kit) => {
	const { worstError } = calibrateKit(kit);
	expect(worstError).toBeLessThan(0.05 * dropWorth(kit));
});
