import {
	benchReadyFor,
	cleanEnd,
	createBench,
	endVolumeMl,
	kindOf,
	PlanSchema,
	runHands,
	TruthSchema,
	WaterSchema,
	type Passed,
	type Plan,
	type Truth
} from '../../src/lib/bench';
import { valueFromMark, type Kit, type Valued } from '../../src/lib/kits';
import { buretteLimitMl, syringeLimitMl } from '../../src/lib/metrology';
import type { Chance } from './chance';

/**
 * A test on the practice bench by hands, ware and bottles that are drawn at random within ordinary
 * limits: the very ones that a budget claims. The bench itself knows no error of a scale and no eye
 * that lays an edge beside a line, so both are put on the mark where it is read.
 */

/** What stays the same from test to test: one person with one kit. */
export type Household = {
	sampleFactor: number;
	strengthFactor: number;
	dropFactor: number;
	/** −1 to 1: where in its limits the scale of the syringe or burette lies. */
	scale: number;
	/** End colour as this person takes it, in drops past the leaflet's. */
	colourDrops: number;
};

/** The spreads, typed again from the sources that stand in the budget's lines. */
export function drawHousehold(kit: Kit, chance: Chance): Household {
	const { sample } = kit;
	const volumeMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
	const capacityMl = Math.max(...sample.volumes.map((each) => each.volumeMl));
	return {
		sampleFactor:
			1 +
			(sample.measuredIn === 'syringe'
				? chance.triangular(syringeLimitMl(capacityMl, volumeMl) / volumeMl)
				: chance.even(0.02)),
		strengthFactor: 1 + 0.01 * chance.normal(),
		dropFactor: 1 + chance.triangular(0.1),
		scale: chance.triangular(1),
		colourDrops: 0.25 * chance.normal()
	};
}

/** The water of a day: ordinary seawater of any alkalinity that is met with. */
export function drawWater(chance: Chance): Truth['water'] {
	return WaterSchema.parse({
		alkalinityDkh: 8.5 + chance.even(3.5),
		salinity: 35 + chance.even(1),
		temperatureC: 24.5 + chance.even(2.5),
		ph: 8.15 + chance.even(0.25)
	});
}

/** The leaflet's carbon at the end, for turning drops of colour into a hue; the same for all waters. */
const passed = new Map<string, Passed>();
function cleanPassedOf(kit: Kit): Passed {
	const known = passed.get(kit.id);
	if (known !== undefined) return known;
	const found = cleanEnd(kit, WaterSchema.parse({ alkalinityDkh: 8 })).passed;
	passed.set(kit.id, found);
	return found;
}

/** The hue at which this person stops: so many drops past the leaflet's own, in this very vial. */
export function hueFor(kit: Kit, truth: Truth, plan: Plan, drops: number): number {
	const kind = kindOf(kit);
	const { contents } = benchReadyFor(createBench({ kit, truth, seed: 1 }), 'fill', plan);
	const molPerL = (kit.contents?.titrant.molPerL ?? 0) * (truth.titrant?.strengthFactor ?? 1);
	const aired = contents && kind.withPassed(contents, cleanPassedOf(kit));
	const endMl = aired && endVolumeMl(kit, aired, molPerL);
	if (!aired || endMl === null) throw new Error('no end to see');
	const volumeMl = Math.max(0, endMl + drops * kit.delivery.dropMl);
	return kind.placeOnTheWay(kind.titratedTo(aired, { volumeMl, molPerL }));
}

/** What a hand does anew each time, besides its drops. */
export function drawPlan(kit: Kit, chance: Chance, slip: Partial<Plan>): Plan {
	const { delivery, sample } = kit;
	const capacityMl = Math.max(...sample.volumes.map((each) => each.volumeMl));
	return PlanSchema.parse({
		// A quarter of a mm on 40 mm of a syringe; 0.4 mm in a vial 20 mm wide.
		sampleOffMl: chance.even(sample.measuredIn === 'syringe' ? capacityMl / 160 : 0.04 * Math.PI),
		swirlMs: 2000 + Math.round(chance.even(800)),
		tiltDegrees: delivery.by === 'dropper' ? 5 + chance.even(5) : 0,
		fillOffMl: delivery.by === 'dropper' ? 0 : 0.2 * delivery.graduationMl * chance.normal(),
		...slip
	});
}

/** The mark as this eye writes it down, with the scale's own error; drops are counted right. */
function markOf(
	kit: Kit,
	run: ReturnType<typeof runHands>,
	household: Household,
	chance: Chance
): { markMl?: number; drops?: number } {
	const { delivery } = kit;
	const { state } = run;
	if (delivery.by === 'dropper') return { drops: state.dropsSinceFill };
	const aligned = 0.2 * delivery.graduationMl * chance.normal();
	const written = (markMl: number) => {
		const half = delivery.graduationMl / 2;
		return { markMl: Math.round((markMl + aligned) / half) * half };
	};
	if (delivery.by === 'burette') {
		if (state.delivery.by !== 'burette') throw new Error('the bench has no burette');
		const levelMl = state.delivery.burette.levelMl ?? Number.NaN;
		return written(levelMl - household.scale * buretteLimitMl(delivery.capacityMl));
	}
	if (state.delivery.by !== 'syringe') throw new Error('the bench has no syringe');
	const filledMl = state.filledTo?.sealMl ?? delivery.capacityMl;
	const usedMl = filledMl - state.delivery.syringe.sealMl;
	const offMl = household.scale * syringeLimitMl(delivery.capacityMl, usedMl);
	return written(filledMl - (usedMl - offMl));
}

/** One test by these hands, and what its mark comes to. */
export function testByHands(
	kit: Kit,
	water: Truth['water'],
	household: Household,
	chance: Chance,
	slip: Partial<Plan> = {}
): Valued {
	const truth = TruthSchema.parse({
		water,
		titrant: { strengthFactor: household.strengthFactor },
		ware: { sampleFactor: household.sampleFactor, dropFactor: household.dropFactor }
	});
	const plan = drawPlan(kit, chance, slip);
	const drops = household.colourDrops + 0.25 * chance.normal();
	const hueDegrees = hueFor(kit, truth, plan, drops);
	const theirs = { ...kit, endPoint: { ...kit.endPoint, hueDegrees } };
	const seed = Math.floor(chance.uniform() * 2 ** 31);
	const run = runHands(createBench({ kit: theirs, truth, seed }), plan);
	return valueFromMark(kit, markOf(kit, run, household, chance));
}
