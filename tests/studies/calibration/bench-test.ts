import {
	cleanPlan,
	createBench,
	runHands,
	TruthSchema,
	type HandsRun,
	type Plan,
	type Truth
} from '../../../src/lib/bench';
import { valueFromMark, type Kit } from '../../../src/lib/kits';
import { buretteLimitMl, syringeLimitMl } from '../../../src/lib/metrology';
import type { Chance } from '../chance';
import { drawPlan, hueFor, type Household } from '../hands';
import type { Played } from './bench-faults';

/** One test on the bench: by whose hands and things, of which water, and what goes wrong in it. */
export type BenchTest = {
	kit: Kit;
	household: Household;
	water: Truth['water'];
	played: readonly Played[];
	/** One of the kit's sample volumes; the nominal one when left out. */
	volumeId?: string;
};

/** All that is played at once: plans one over the other, factors multiplied. */
function together({ household, water, played }: BenchTest) {
	const product = (of: (each: Played) => number | undefined) =>
		played.reduce((sum, each) => sum * (of(each) ?? 1), 1);
	return {
		plan: Object.assign({}, ...played.map(({ plan }) => plan)) as Partial<Plan>,
		household: Object.assign({}, household, ...played.map((each) => each.household)) as Household,
		water: played.reduce((changed, each) => each.water?.(changed) ?? changed, water),
		truth: {
			titrant: { strengthFactor: household.strengthFactor * product((each) => each.strength) },
			indicator: { strengthFactor: product((each) => each.indicator) },
			ware: {
				sampleFactor: household.sampleFactor * product((each) => each.sample),
				dropFactor: household.dropFactor * product((each) => each.drop),
				...(Object.assign({}, ...played.map(({ ware }) => ware)) as Played['ware'])
			}
		}
	};
}

/** The mark as an eye with this scale before it writes it down; drops are counted as they were. */
function markOf(kit: Kit, { marks }: HandsRun, { scale }: Household, chance: Chance) {
	const { delivery } = kit;
	if (delivery.by === 'dropper') return { drops: marks.drops };
	const aligned = 0.2 * delivery.graduationMl * chance.normal();
	const half = delivery.graduationMl / 2;
	const written = (markMl: number) => Math.round((markMl + aligned) / half) * half;
	if (delivery.by === 'burette')
		return {
			markMl: written((marks.levelMl ?? Number.NaN) - scale * buretteLimitMl(delivery.capacityMl))
		};
	const markMl = marks.sealMl ?? marks.lineMl ?? Number.NaN;
	const usedMl = Math.max(0, delivery.capacityMl - markMl);
	return { markMl: written(markMl + scale * syringeLimitMl(delivery.capacityMl, usedMl)) };
}

/** Hands stop at their own hue; in water without any alkalinity, at the leaflet's. */
function ownHue(kit: Kit, truth: Truth, plan: Plan, drops: number): number {
	try {
		return hueFor(kit, truth, plan, drops);
	} catch {
		return kit.endPoint.hueDegrees ?? 340;
	}
}

/** What the test comes to, in the kit's unit (dKH for the house kits). */
export function valueOnBench(test: BenchTest, chance: Chance): number {
	const { kit, volumeId } = test;
	const all = together(test);
	const truth = TruthSchema.parse({ ...all.truth, water: all.water });
	const drawn = drawPlan(kit, chance, {});
	const plan: Plan = {
		...cleanPlan,
		...drawn,
		...all.plan,
		...(volumeId === undefined ? {} : { volumeId })
	};
	const drops = all.household.colourDrops + 0.25 * chance.normal();
	const hueDegrees = ownHue(kit, truth, plan, drops);
	const theirs = { ...kit, endPoint: { ...kit.endPoint, hueDegrees } };
	const seed = Math.floor(chance.uniform() * 2 ** 31);
	const run = runHands(createBench({ kit: theirs, truth, seed }), plan);
	// A syringe read past its end, or below nothing used, is written down as its end.
	const mark = markOf(kit, run, all.household, chance);
	const { value } = valueFromMark(kit, {
		...within(kit, mark),
		sampleVolumeMl: run.sampleVolumeMl
	});
	return test.played.reduce((worked, each) => each.value?.(worked) ?? worked, value);
}

function within(kit: Kit, mark: { markMl?: number; drops?: number | undefined }) {
	const { delivery } = kit;
	if (delivery.by === 'dropper') return { drops: Math.max(0, mark.drops ?? Number.NaN) };
	const last = delivery.by === 'syringe' ? delivery.barrelEndMl : delivery.capacityMl;
	const most = delivery.by === 'syringe' ? delivery.capacityMl : last;
	return { markMl: Math.min(most, Math.max(0, mark.markMl ?? Number.NaN)) };
}
