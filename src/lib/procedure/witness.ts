import { advance, factsOf, type BenchAction, type BenchState } from '../bench';
import { numeralAt } from '../kits';
import type { WalkEvent } from '../observation';

/** Numerals of seal and line, as they are printed on this kit's syringe. */
function numerals(state: BenchState): { sealMl?: number; lineMl?: number; levelMl?: number } {
	const facts = factsOf(state);
	const { delivery } = state.kit;
	if (delivery.by === 'burette') return facts.levelMl === null ? {} : { levelMl: facts.levelMl };
	if (delivery.by !== 'syringe' || facts.sealMl === null) return {};
	return {
		sealMl: numeralAt(delivery, facts.sealMl),
		...(facts.lineMl === null ? {} : { lineMl: numeralAt(delivery, facts.lineMl) })
	};
}

/** What stands there to be read, as numerals or drops: for comparing with what was typed. */
export function standingMarks(state: BenchState) {
	return state.kit.delivery.by === 'dropper'
		? { drops: factsOf(state).dropsFallen }
		: numerals(state);
}

const drawn = (before: BenchState, after: BenchState): WalkEvent => {
	const facts = factsOf(after);
	return {
		type: 'titrant.drawn',
		...numerals(after),
		...(facts.tip ? { tip: facts.tip } : {}),
		tipAirMl: facts.endAirMl,
		hangingMl: facts.hangingMl,
		drawnAgainMl: after.refilledMl - before.refilledMl
	};
};

/** Titrant that reached the vial between two moments, if any did. */
function fallen(before: BenchState, after: BenchState): WalkEvent[] {
	const fresh = after.drops.slice(before.drops.length);
	if (fresh.length === 0) return [];
	const dropper = after.delivery.by === 'dropper' ? after.delivery : null;
	return [
		{
			type: 'titrant.fell',
			drops: fresh.length,
			volumeMl: fresh.reduce((sum, drop) => sum + drop.volumeMl, 0),
			intoPlume: fresh[0]?.intoPlume ?? false,
			...(dropper ? { tiltDegrees: dropper.tiltDegrees, squeezedHard: dropper.squeezedHard } : {})
		}
	];
}

type Saw = (before: BenchState, after: BenchState) => WalkEvent[];

/** What an onlooker would write down of each kind of deed; deeds that say nothing are not here. */
const saw: {
	[Type in BenchAction['type']]?: (action: Extract<BenchAction, { type: Type }>) => Saw;
} = {
	'sample.choose': (action) => () => [{ type: 'sample.chosen', volumeId: action.volumeId }],
	'ware.rinse': (action) => () => [{ type: 'vial.rinsed', ware: action.ware, with: action.with }],
	'sample.pour': () => (before, after) => measured(before, after),
	'sample.fillToLine': () => (before, after) => measured(before, after),
	'reagent.dose': (action) => () => [
		{ type: 'reagent.added', reagentId: action.reagentId, amount: 1 }
	],
	'swirl.stop': () => (before, after) =>
		before.swirlStartedAt === null
			? []
			: [{ type: 'vial.swirled', seconds: (after.at - before.swirlStartedAt) / 1000 }],
	'tip.fit': (action) => (before) => [
		{
			type: 'tip.fitted',
			firm: action.firm,
			// A tip that is on already is only seated anew: it is full.
			liquidInside:
				before.delivery.by === 'syringe' &&
				before.delivery.syringe.tip === 'off' &&
				before.delivery.syringe.liquidMl > 0
		}
	],
	'titrant.draw': () => (before, after) => [drawn(before, after)],
	'titrant.purge': () => (before, after) => [drawn(before, after)],
	'burette.fill': () => (before, after) => [drawn(before, after)],
	'burette.runOut': () => (before, after) => [drawn(before, after)],
	'tip.wipe': () => (before) => [{ type: 'tip.wiped', hangingMl: before.delivery.hangingMl }],
	'tip.touchOff': () => (before, after) =>
		after.inVialMl > before.inVialMl
			? [{ type: 'drop.touchedOff', volumeMl: before.delivery.hangingMl }]
			: [],
	'lamp.set': (action) => () => [{ type: 'lamp.changed', lamp: action.lamp }]
};

function measured(before: BenchState, after: BenchState): WalkEvent[] {
	if (after.sample === before.sample) return [];
	const { sample } = after;
	return [
		{
			type: 'sample.measured',
			volumeMl: sample.markMl,
			strayWaterMl: sample.displacing.volumeMl + sample.adding.volumeMl,
			strayInMeasureMl: sample.displacing.volumeMl,
			airMl: sample.airMl
		}
	];
}

/** What happened by itself until the bench stood at a later time: drops that were on their way. */
export function witnessIdle(before: BenchState, now: BenchState): WalkEvent[] {
	const isSpent = isEmpty(now) && !isEmpty(before) && now.drops.length > 0;
	return [...fallen(before, now), ...(isSpent ? [{ type: 'titrant.spent' } as const] : [])];
}

const isEmpty = (state: BenchState) => factsOf(state).isEmpty;

/**
 * What happened at the practice bench from one action to the next, in the words of the walk: first
 * what went on by itself meanwhile, then the deed.
 *
 * @param before the bench as the action before left it
 * @param after the bench right after this action
 */
export function witness(before: BenchState, action: BenchAction, after: BenchState): WalkEvent[] {
	const meanwhile = advance(before, after.at);
	const see = saw[action.type] as ((each: BenchAction) => Saw) | undefined;
	return [...witnessIdle(before, meanwhile), ...(see ? see(action)(meanwhile, after) : [])];
}
