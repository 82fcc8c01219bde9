import { describe, expect, it } from 'vitest';
import {
	createBench,
	PlanSchema,
	runHands,
	trueValueOf,
	type HandsRun,
	type Plan
} from '../../src/lib/bench';
import { faultById, type FaultSize } from '../../src/lib/judgement';
import { houseCalciumKit, houseHardnessKit, valueFromMark, type Kit } from '../../src/lib/kits';
import { methodFiguresOf } from '../../src/lib/metrology';
import { truthOf } from '../bench/house';

/**
 * The catalogue against hands on the bench, for titrations with EDTA, as it is done for those with acid:
 * the mean change of the value lies within one of the ways in which the fault is said to come out.
 */
type Different = NonNullable<Parameters<typeof truthOf>[0]>;
type Played = {
	fault: string;
	how: string;
	kit: Kit;
	plan?: Partial<Plan>;
	different?: Different;
	/** What is written down of the volume that refills gave; all of it when left out. */
	countedOfRefills?: number;
};

const aged = (carbonatedShare: number): Different => ({ reagents: { base: { carbonatedShare } } });
const weak = (strengthFactor: number): Different => ({ reagents: { base: { strengthFactor } } });
const cold: Different = { water: { temperatureC: 10 } };
const bufferOff = (phOff: number): Different => ({ reagents: { ammoniaBuffer: { phOff } } });

const played: readonly Played[] = [
	{ fault: 'baseOld', how: '0.30 carbonated', kit: houseCalciumKit, different: aged(0.3) },
	{ fault: 'baseOld', how: '0.34 carbonated', kit: houseCalciumKit, different: aged(0.34) },
	{ fault: 'baseOld', how: '0.66 of its strength', kit: houseCalciumKit, different: weak(0.66) },
	{
		fault: 'baseShort',
		how: 'five drops fewer',
		kit: houseCalciumKit,
		plan: { extraPhReagent: -5 }
	},
	{ fault: 'coldOrFast', how: '10 °C, calcium', kit: houseCalciumKit, different: cold },
	{ fault: 'coldOrFast', how: '10 °C, hardness', kit: houseHardnessKit, different: cold },
	{ fault: 'coldOrFast', how: 'not swirled', kit: houseCalciumKit, plan: { swirlMs: 0 } },
	{
		fault: 'blueTurnedBack',
		how: 'two drops early',
		kit: houseCalciumKit,
		plan: { dropsPastEnd: -2 }
	},
	{ fault: 'bufferOff', how: 'pH too low by 1', kit: houseHardnessKit, different: bufferOff(-1) },
	{ fault: 'bufferOff', how: 'pH too high by 1', kit: houseHardnessKit, different: bufferOff(1) },
	{
		fault: 'fillingForgotten',
		how: 'first filling not counted',
		kit: houseHardnessKit,
		countedOfRefills: 0
	},
	{
		fault: 'filledByLineAgain',
		how: 'filled by the line',
		kit: houseHardnessKit,
		plan: { fillBy: 'line' }
	},
	{
		fault: 'lineAtRefills',
		how: 'filled and read by the line',
		kit: houseHardnessKit,
		plan: { fillBy: 'line', readBy: 'line' }
	}
];

const seeds = [1, 2, 3, 4, 5, 6];
const SLOW_MS = 120_000;
const meanOf = (numberOf: (seed: number) => number) =>
	seeds.reduce((sum, seed) => sum + numberOf(seed), 0) / seeds.length;

function valueOf(kit: Kit, { marks, refilledMl }: HandsRun, counted = 1): number {
	const markMl = marks.sealMl ?? marks.lineMl;
	return valueFromMark(kit, { markMl, refilledMl: counted * refilledMl }).value;
}

/** Difference from the truth of one test, in the unit of the kit. */
function errorOf({ kit, plan = {}, different = {}, countedOfRefills }: Played, seed: number) {
	const truth = truthOf(different);
	const run = runHands(createBench({ kit, truth, seed }), PlanSchema.parse(plan));
	return valueOf(kit, run, countedOfRefills) - trueValueOf(truth.water, kit);
}

const clean = new Map<Kit, number>();
function cleanOf(kit: Kit): number {
	const known = clean.get(kit) ?? meanOf((seed) => errorOf({ fault: '', how: '', kit }, seed));
	clean.set(kit, known);
	return known;
}

/** A way of coming out, in the unit of the kit: what one of its measure is worth is said by the leaflet. */
function inUnit({ of, mean, sd }: FaultSize, kit: Kit): { centre: number; sd: number } {
	const { valuePerMl, dropMl, tipMl, filling } = methodFiguresOf(kit);
	const tip = valuePerMl * (tipMl ?? Number.NaN);
	const worth: Partial<Record<FaultSize['of'], number>> = {
		customaryUnit: 1,
		drops: valuePerMl * dropMl,
		tips: tip,
		tipsEach: tip * (filling?.count ?? Number.NaN),
		tipsAgain: tip * ((filling?.count ?? Number.NaN) - 1),
		fillings: valuePerMl * (filling?.ml ?? Number.NaN)
	};
	const one = worth[of] ?? Number.NaN;
	return { centre: mean * one, sd: sd * Math.abs(one) };
}

describe('hands that make the mistake with EDTA on the bench', () => {
	const rows: string[] = [];
	it.each(played)(
		'$fault, $how: move the value as the catalogue says',
		(each) => {
			const fault = faultById(each.fault);
			if (!fault) throw new Error(`no fault ${each.fault}`);
			const { kit } = each;
			const change = meanOf((seed) => errorOf(each, seed)) - cleanOf(kit);
			const ways = fault.sizes.map((size) => {
				const { centre, sd } = inUnit(size, kit);
				return { centre, sd, away: Math.abs(change - centre) / sd };
			});
			const nearest = ways.reduce((best, way) => (way.away < best.away ? way : best));
			rows.push(
				`${each.fault.padEnd(18)} ${each.how.padEnd(30)} ${change.toFixed(2).padStart(7)} ${kit.unit}; listed ${nearest.centre.toFixed(2)} ± ${nearest.sd.toFixed(2)}, ${nearest.away.toFixed(1)} away`
			);
			expect(nearest.away).toBeLessThan(2.5);
		},
		SLOW_MS
	);
	it('are listed', () => {
		console.log(rows.join('\n'));
		expect(rows).toHaveLength(played.length);
	});
});
