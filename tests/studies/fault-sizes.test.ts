import { describe, expect, it } from 'vitest';
import { faultById, type FaultSize } from '../../src/lib/judgement';
import { methodFiguresOf } from '../../src/lib/metrology';
import type { Kit } from '../../src/lib/kits';
import type { Plan } from '../../src/lib/bench';
import { buretteKit, dropperKit, syringeKit, truthOf, worked } from '../bench/house';

/**
 * The catalogue against hands on the bench that make the mistake: the mean change of the value lies
 * within one of the ways in which the fault is said to come out. The bench knows nothing of the
 * catalogue, and the other way round.
 */
type Different = NonNullable<Parameters<typeof truthOf>[0]>;
type Played = {
	fault: string;
	how: string;
	plan?: Partial<Plan>;
	different?: Different;
	/** The syringe kit when left out. */
	kit?: Kit;
	/** The plan it is held against; hands without a mistake when left out. */
	against?: Partial<Plan>;
};

const played: readonly Played[] = [
	{ fault: 'filledByLine', how: 'filled by the line', plan: { fillBy: 'line' } },
	{ fault: 'readByLine', how: 'read by the line', plan: { readBy: 'line' } },
	{ fault: 'tipFittedLate', how: 'tip after filling', plan: { tipFitted: 'after' } },
	{ fault: 'tipLoose', how: 'tip loose', plan: { tipFitted: 'loose' } },
	{ fault: 'airLeft', how: '0.03 mL of air drawn last', plan: { airDrawnMl: 0.03 } },
	{
		fault: 'titrantWareWet',
		how: '0.04 mL of water in 1 mL of titrant',
		different: { titrant: { strengthFactor: 1 / 1.04 } }
	},
	{ fault: 'stoppedAtFlash', how: 'one drop early', plan: { dropsPastEnd: -1 } },
	{ fault: 'stoppedAtFlash', how: 'four drops early', plan: { dropsPastEnd: -4 } },
	{
		fault: 'stoppedAtFlash',
		how: 'two drops early, dropper',
		plan: { dropsPastEnd: -2 },
		kit: dropperKit
	},
	{
		fault: 'stoppedAtFlash',
		how: 'two drops early, burette',
		plan: { dropsPastEnd: -2 },
		kit: buretteKit
	},
	{ fault: 'overshot', how: 'one drop more', plan: { dropsPastEnd: 1 } },
	{ fault: 'overshot', how: 'three drops more', plan: { dropsPastEnd: 3 } },
	{ fault: 'chasedColour', how: 'eight rounds of chasing', plan: { chaseRounds: 8 } },
	{ fault: 'swirledOddly', how: 'not swirled', plan: { swirlMs: 0 } },
	{ fault: 'swirledOddly', how: 'shaken for 10 s', plan: { swirlMs: 10_000 } },
	{ fault: 'indicatorDose', how: 'one drop more', plan: { extraIndicator: 1 } },
	{ fault: 'indicatorPale', how: 'pale', different: { indicator: { strengthFactor: 0.4 } } },
	{ fault: 'wrongRim', how: 'far rim at the end', plan: { readOff: 0.05 } },
	{ fault: 'wrongTick', how: 'three lines', plan: { readOff: 0.06 } },
	{ fault: 'parallax', how: 'half a line', plan: { readOff: 0.01 } },
	{ fault: 'usedForLeft', how: 'scale reversed', plan: { scaleReversed: true } },
	{ fault: 'dropsMiscounted', how: 'one more', plan: { readOff: 1 }, kit: dropperKit },
	{ fault: 'dropsMiscounted', how: 'two fewer', plan: { readOff: -2 }, kit: dropperKit },
	{ fault: 'dropperTilted', how: '45 degrees', plan: { tiltDegrees: 45 }, kit: dropperKit },
	{ fault: 'dropperSqueezed', how: 'hard', plan: { squeezedHard: true }, kit: dropperKit },
	{ fault: 'sampleBesideMark', how: '0.15 of 6 mL short', plan: { sampleOffMl: -0.15 } },
	{ fault: 'sampleBesideMark', how: '0.15 of 6 mL more', plan: { sampleOffMl: 0.15 } },
	{ fault: 'sampleAir', how: '0.3 of 6 mL air', plan: { sampleAirMl: 0.3 } },
	{ fault: 'sampleWareWet', how: 'wet syringe', plan: { rinseSampler: 'purified' } },
	{ fault: 'sampleWareWet', how: 'wet vial', plan: { rinseVial: 'purified' }, kit: dropperKit },
	{
		fault: 'grainsInSample',
		how: '0.1 mg of carbonate',
		different: { water: { carbonateGrainsMg: 0.1 } },
		plan: { chaseRounds: 12 }
	},
	{
		fault: 'titrantStronger',
		how: '6 in a hundred',
		different: { titrant: { strengthFactor: 1.06 } }
	},
	{
		fault: 'lotOff',
		how: '6 in a hundred weak',
		different: { titrant: { strengthFactor: 0.94 } }
	},
	{ fault: 'sealSticks', how: 'by 0.09 mL', different: { ware: { stickyJumpMl: 0.09 } } },
	{
		fault: 'titrantScaleOff',
		how: 'drops 6 in a hundred large',
		different: { ware: { dropFactor: 1.06 } },
		kit: dropperKit
	},
	{
		fault: 'sampleScaleOff',
		how: '5 in a hundred large',
		different: { ware: { sampleFactor: 1.05 } }
	},
	{ fault: 'hardFilm', how: 'rinsed with tap water', plan: { rinseVial: 'tap' } },
	{
		fault: 'baseTrace',
		how: '0.3 µL of 8 mol/L',
		plan: { rinseVial: 'none' },
		different: { ware: { vialLeftMl: 0.0003, vialLeftMeqPerL: 8000 } },
		against: { rinseVial: 'none' }
	},
	{
		fault: 'acidTrace',
		how: '2 µL of 1 mol/L',
		plan: { rinseVial: 'none' },
		different: { ware: { vialLeftMl: 0.002, vialLeftMeqPerL: -1000 } },
		against: { rinseVial: 'none' }
	}
];

const SEEDS = 16;
const SLOW_MS = 60_000;
const clean = new Map<string, number>();

/** Values spread evenly about 8, so that the end falls anywhere between two drops. */
const alkalinityOf = (seed: number) => 7.3 + 1.4 * ((seed * 0.618034) % 1);

function cleanValue(kit: Kit, plan: Partial<Plan>, seed: number): number {
	const key = JSON.stringify([kit.id, plan, seed]);
	const known = clean.get(key);
	if (known !== undefined) return known;
	const { value } = worked(
		kit,
		plan,
		truthOf({ water: { alkalinityDkh: alkalinityOf(seed) } }),
		seed
	);
	clean.set(key, value);
	return value;
}

/** Mean change of the value by the mistake, and the mean value without it. */
function moved({ kit = syringeKit, plan = {}, different = {}, against = {} }: Played) {
	// A whole drop of the dropper is coarse: more of them, for the mean.
	const seeds = kit === dropperKit ? 4 * SEEDS : SEEDS;
	let change = 0;
	let value = 0;
	for (let seed = 1; seed <= seeds; seed++) {
		const water = { ...different.water, alkalinityDkh: alkalinityOf(seed) };
		const without = cleanValue(kit, against, seed);
		change += worked(kit, plan, truthOf({ ...different, water }), seed).value - without;
		value += without;
	}
	return { change: change / seeds, value: value / seeds };
}

/** A way of coming out in dKH, for a kit and a value. */
function inDkh(
	{ of, mean, sd }: FaultSize,
	kit: Kit,
	value: number
): { centre: number; sd: number } {
	const { valuePerMl, dropMl, tipMl, graduationMl, fullScale } = methodFiguresOf(kit);
	if (of === 'fullScaleLess') return { centre: (fullScale ?? NaN) + mean - 2 * value, sd };
	const one = {
		share: value,
		customaryUnit: 1,
		timesScatter: NaN,
		// What is in the vial then has nothing to do with the tank.
		otherWater: NaN,
		mL: valuePerMl,
		drops: valuePerMl * dropMl,
		tips: valuePerMl * (tipMl ?? NaN),
		// Of kits that are filled again only, which these are not.
		tipsEach: NaN,
		tipsAgain: NaN,
		fillings: NaN,
		divisions: valuePerMl * (graduationMl ?? NaN)
	}[of];
	return { centre: mean * one, sd: sd * one };
}

describe('hands that make the mistake on the bench', () => {
	const rows: string[] = [];
	it.each(played)(
		'$fault, $how: move the value as the catalogue says',
		(each) => {
			const fault = faultById(each.fault);
			if (!fault) throw new Error(`no fault ${each.fault}`);
			const kit = each.kit ?? syringeKit;
			const { change, value } = moved(each);
			const ways = fault.sizes.map((size) => {
				const { centre, sd } = inDkh(size, kit, value);
				return { centre, sd, away: Math.abs(change - centre) / sd };
			});
			const nearest = ways.reduce((best, way) => (way.away < best.away ? way : best));
			rows.push(
				`${each.fault.padEnd(18)} ${each.how.padEnd(34)} ${change.toFixed(2).padStart(6)} dKH; listed ${nearest.centre.toFixed(2)} ± ${nearest.sd.toFixed(2)}`
			);
			expect(nearest.away).toBeLessThan(3);
		},
		SLOW_MS
	);
	it('are listed', () => {
		console.log(rows.join('\n'));
		expect(rows).toHaveLength(played.length);
	});
});
