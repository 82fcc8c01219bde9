import type { BenchAction, BenchActionType } from './action';
import { advance } from './advance';
import { doseReagent, drawSample, fillToLine, pourSample, rinse } from './deeds-sample';
import * as titrant from './deeds-titrant';
import { chosenVolumeMl, titrantMolPerL, type BenchState } from './state';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';

type Deed<Type extends BenchActionType> = (
	state: BenchState,
	action: Extract<BenchAction, { type: Type }>
) => BenchState;

/** What each action does at its moment. A new action does not compile until it stands here. */
const deeds: { [Type in BenchActionType]: Deed<Type> } = {
	'sample.choose': (state, { volumeId }) => {
		const known = state.kit.sample.volumes.map((volume) => volume.id);
		if (!known.includes(volumeId))
			throw new RangeError(`volumeId must be one of ${known.join(', ')}; found ${volumeId}`);
		return { ...state, volumeId };
	},
	'ware.rinse': (state, action) => rinse(state, action.ware, action.with),
	'sample.draw': (state, { toMl, nose }) => drawSample(state, toMl, nose ?? 'under'),
	'sample.pour': (state) => pourSample(state),
	'sample.fillToLine': (state, { levelMl }) => fillToLine(state, levelMl),
	'reagent.dose': (state, { reagentId }) => doseReagent(state, reagentId),
	'swirl.start': (state) =>
		state.swirlStartedAt === null ? { ...state, swirlStartedAt: state.at } : state,
	'swirl.stop': (state) =>
		state.swirlStartedAt === null
			? state
			: { ...state, swirlStartedAt: null, lastSwirlEndedAt: state.at },
	'tip.fit': (state, { firm }) => titrant.putTipOn(state, firm),
	'tip.remove': (state) => titrant.takeTipOff(state),
	'titrant.draw': (state, { sealMl, end }) => titrant.drawTitrant(state, sealMl, end),
	'titrant.purge': (state, { sealMl }) => titrant.purgeAir(state, sealMl),
	'burette.fill': (state, { levelMl }) => titrant.pourIntoBurette(state, levelMl),
	'burette.runOut': (state, { volumeMl }) => titrant.runOut(state, volumeMl),
	'tip.wipe': (state) => titrant.wipeTip(state),
	'tip.touchOff': (state) => titrant.touchOff(state),
	'flow.start': (state) => titrant.startFlow(state),
	'flow.stop': (state) => titrant.stopFlow(state),
	'flow.give': (state, { size }) => titrant.give(state, size),
	'dropper.tilt': (state, { degrees }) => titrant.tiltDropper(state, degrees),
	'dropper.squeeze': (state, { hard }) => titrant.squeezeDropper(state, hard),
	'eye.move': (state, { degrees }) => ({
		...state,
		eyeDegrees: Math.max(-40, Math.min(40, degrees))
	}),
	'lamp.set': (state, { lamp }) => ({ ...state, lamp }),
	'comparison.make': (state) => ({ ...state, comparison: comparisonOf(state) }),
	'comparison.putAway': (state) => ({ ...state, comparison: null }),
	'vial.look': (state) => ({ ...state, looks: state.looks + 1 })
};

/**
 * A second vial with the same sample and indicator, taken well past any end: what the liquid looks
 * like when it has turned for good.
 */
function comparisonOf(state: BenchState): BenchState['comparison'] {
	const { kit, sampleContents } = state;
	if (!sampleContents) return null;
	const kind = kindOf(kit);
	const molPerL = titrantMolPerL(state);
	const neededMl = (kind.mostTitrantMol(sampleContents) / molPerL) * 1000;
	const volumeMl = neededMl * 1.03 + 0.01 * chosenVolumeMl(state);
	return kind.titratedTo(sampleContents, titrantPortion(kit, volumeMl, molPerL));
}

/** Deeds that touch neither glass nor liquid: whatever is under way goes on as if they were not. */
const idle: ReadonlySet<BenchActionType> = new Set([
	'eye.move',
	'lamp.set',
	'comparison.make',
	'comparison.putAway',
	'vial.look'
]);

/** @throws RangeError naming the field of the action that is no number */
function requireNumbers(action: BenchAction): void {
	for (const [field, value] of Object.entries(action))
		if (typeof value === 'number' && !Number.isFinite(value))
			throw new RangeError(`${field} of ${action.type} must be a number; found ${value}`);
}

/**
 * The bench after an action.
 *
 * Pure: the same state, action and time give the same result. What cannot happen in glass is held
 * by the glass (a plunger stops at its ends).
 *
 * @param at ms since the run began
 * @throws RangeError naming what was wrong: time running backwards, a field that is no number,
 *   glass that the kit does not have, an id that is not known
 */
export function reduce(state: BenchState, action: BenchAction, at: number): BenchState {
	requireNumbers(action);
	const now = advance(state, at);
	const deed = deeds[action.type] as Deed<BenchActionType>;
	const done = deed(now, action);
	return { ...done, from: idle.has(action.type) && now.from ? deed(now.from, action) : null };
}
