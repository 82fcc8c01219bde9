import { dropperDropFactor } from '../glassware';
import type { Marks, Slip, SlipKind } from '../observation';
import type { Account, ReadOff } from './account';
import { cleanEnd } from './calibrate';
import { bottlesOf } from './dosing';
import { asMeant, endOf, leafletValue, stoodNumeral, travelOf } from './reported';
import { chosenVolumeMl, type BenchState } from './state';
import { kindOf } from './titration-kind';

const noReadOff: ReadOff = { parallax: 0, rim: 0, mistake: 0, rounding: 0 };

/** What the learner declared. */
export type Declared = { marks: Marks; value: number };

/** Sizes of all slips of a kind, mL. */
const sizeOfAll = (slips: readonly Slip[], kind: SlipKind): number =>
	slips.filter((slip) => slip.kind === kind).reduce((sum, slip) => sum + (slip.sizeMl ?? 0), 0);

/** How the offset of a reading falls to the slips that were found; the rest is rounding. */
function readOffOf(total: number, slips: readonly Slip[]): ReadOff {
	const sizeOf = (kind: SlipKind) => sizeOfAll(slips, kind);
	const parallax = sizeOf('parallax');
	const rim = sizeOf('wrongRim');
	const rest = total - parallax - rim;
	const isMistake = slips.some(
		(slip) => slip.kind === 'misread' || slip.kind === 'dropsMiscounted'
	);
	return { parallax, rim, mistake: isMistake ? rest : 0, rounding: isMistake ? 0 : rest };
}

/**
 * The account of a titration as far as glass and hands have come, before anything was read off it. Where
 * nothing was titrated its hands will stop at the end.
 *
 * @param slips those found in its log
 */
export function openAccount(state: BenchState, marks: Marks, slips: readonly Slip[]): Account {
	const { kit, delivery, sampleContents, contents } = state;
	const passed = kindOf(kit).passedBetween(sampleContents, contents);
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? 1;
	const grainsAtStart =
		(state.truth.water.carbonateGrainsMg / 1000 / 100.0869) * (state.sample.markMl / nominalMl);
	const draft: Account = {
		kit,
		chemistry: {
			water: state.truth.water,
			sample: state.sample,
			doses: state.doses,
			bottles: bottlesOf(state.truth),
			titrantMolPerL:
				(kit.contents?.titrant.molPerL ?? 0) * (state.truth.titrant?.strengthFactor ?? 1),
			passed,
			grainsMol: Math.max(0, grainsAtStart - state.grainsMol)
		},
		lagMl: 0,
		stoppedAtMl: state.inVialMl,
		airPushedMl: state.airPushedMl,
		hungAtStartMl: state.hungAtStartMl,
		leakedMl: state.leakedMl,
		hangingAtEndMl: delivery.hangingMl,
		wipedMl: state.wipedMl,
		filledTo: state.filledTo,
		startLevelMl: 0,
		refilledMl: state.refilledMl,
		miscountedRefillMl: 0,
		forgottenRefillMl: -sizeOfAll(slips, 'refillForgotten'),
		dropFactors: dropFactorsOf(state),
		readBy: readByOf(marks, delivery.by),
		readOff: noReadOff,
		isReversed:
			kit.delivery.by === 'syringe' && slips.some((slip) => slip.kind === 'scaleReversed'),
		conversionFactor: 1,
		nominalSampleMl: chosenVolumeMl(state),
		cleanPassed: cleanEnd(kit, state.truth.water).passed,
		sealSticks: (state.truth.ware?.stickyJumpMl ?? 0) > 0
	};
	if (!(state.inVialMl > 0)) return draft;
	const end = endOf(draft);
	return { ...draft, lagMl: end === null ? kit.delivery.dropMl / 2 : state.inVialMl - end };
}

/**
 * The account of a finished titration.
 *
 * @param slips those found in its log
 * @throws RangeError when the marks do not hold what the kit is read by
 */
export function accountOf(state: BenchState, declared: Declared, slips: readonly Slip[]): Account {
	const { delivery } = state;
	const withLag = openAccount(state, declared.marks, slips);
	const withStart =
		delivery.by === 'burette'
			? {
					...withLag,
					startLevelMl: (delivery.burette.levelMl ?? 0) - travelOf(withLag) + state.refilledMl
				}
			: withLag;
	const typed = typedNumeral(declared.marks, withStart.readBy);
	const stood = stoodNumeral(withStart);
	const withRead = {
		...withStart,
		readOff: readOffOf(asMeant(withStart, typed) - stood, slips)
	};
	const counted = {
		...withRead,
		miscountedRefillMl: miscountedRefillMl(withRead, state, typed, declared.value, slips)
	};
	const byLeaflet = leafletValue(counted, typed);
	return {
		...counted,
		conversionFactor: byLeaflet !== 0 ? declared.value / byLeaflet : 1
	};
}

/**
 * Whoever takes a filling on the way to end at the full mark leaves out what was drawn in past it: the air of the
 * tip where it was filled by the line, or as much as it was filled beside. Whether they did, the value that they
 * declared tells.
 */
function miscountedRefillMl(
	account: Account,
	{ refilledPastMl }: BenchState,
	typed: number,
	declaredValue: number,
	slips: readonly Slip[]
): number {
	const mixed = slips.some(({ kind, provisional }) => kind === 'mixedMarks' && !provisional);
	if (!mixed || (account.readBy !== 'seal' && account.readBy !== 'level')) return 0;
	const missBy = (miscounted: number) =>
		Math.abs(leafletValue({ ...account, miscountedRefillMl: miscounted }, typed) - declaredValue);
	return missBy(refilledPastMl) < missBy(0) ? refilledPastMl : 0;
}

function dropFactorsOf(state: BenchState): Account['dropFactors'] {
	const own = state.truth.ware?.dropFactor ?? 1;
	const { delivery } = state;
	const isDropper = delivery.by === 'dropper';
	const tilt = isDropper ? dropperDropFactor(delivery.tiltDegrees, false) : 1;
	const squeeze = isDropper ? dropperDropFactor(0, delivery.squeezedHard) : 1;
	const meanMl = state.dropsSinceFill > 0 ? state.inVialMl / state.dropsSinceFill : 0;
	const byCause = state.kit.delivery.dropMl * own * tilt * squeeze;
	return { own, tilt, squeeze, chance: meanMl > 0 ? meanMl / byCause : 1 };
}

function readByOf(marks: Marks, by: 'syringe' | 'dropper' | 'burette'): Account['readBy'] {
	if (by === 'dropper') return 'drops';
	if (by === 'burette') return 'level';
	return marks.sealMl === undefined && marks.lineMl !== undefined ? 'line' : 'seal';
}

function typedNumeral(marks: Marks, readBy: Account['readBy']): number {
	const typed = {
		seal: marks.sealMl,
		line: marks.lineMl,
		level: marks.levelMl,
		drops: marks.drops
	}[readBy];
	if (typed === undefined) throw new RangeError(`marks must hold the ${readBy} that was read`);
	return typed;
}
