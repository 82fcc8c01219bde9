import type { Marks, Slip, SlipKind } from '../observation';
import type { Kit } from '../kits';
import { accountOf } from './open-account';
import type { Plan } from './plan';
import { PlanSchema } from './plan';
import { askedDosesOf } from './dosing';
import { titrantMolPerL, type BenchState, type StrayWater } from './state';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';

/**
 * The way of working that a finished titration shows: what differed from the leaflet, and the rules
 * by which an aim was pursued with the lag it was missed by. Done again with it, the same hands meet
 * the same water with fresh chance.
 */
export function planOf(
	state: BenchState,
	declared: { marks: Marks; value: number },
	slips: readonly Slip[]
): Plan {
	const account = accountOf(state, declared, slips);
	const { kit, delivery } = state;
	const made = new Set(slips.filter((slip) => !slip.provisional).map((slip) => slip.kind));
	const lagDrops = account.lagMl / kit.delivery.dropMl - 0.5;
	const nominalMl = account.nominalSampleMl;
	return PlanSchema.parse({
		volumeId: state.volumeId,
		...rinsing(state),
		sampleOffMl: clamp(state.sample.markMl - nominalMl, nominalMl / 2),
		sampleAirMl: state.sample.airMl,
		extraIndicator: extraDoses(state, (role) => role === 'indicator'),
		extraPhReagent: extraDoses(state, (role) => role !== 'indicator'),
		...filling(state, made),
		wiped: !made.has('hangingAtStart'),
		swirlMs: swirlMsOf(state),
		dropsPastEnd: Math.abs(lagDrops) < 1 ? 0 : Math.round(clamp(lagDrops, 20)),
		touchedOff: delivery.hangingMl === 0,
		...(delivery.by === 'dropper'
			? { tiltDegrees: delivery.tiltDegrees, squeezedHard: delivery.squeezedHard }
			: {}),
		readBy: account.readBy === 'line' ? 'line' : 'seal',
		readOff: made.has('misread') || made.has('wrongRim') ? readOff(account) : 0,
		scaleReversed: account.isReversed,
		refillsForgotten: made.has('refillForgotten'),
		...(slips.some(({ kind, variant }) => kind === 'waitOff' && variant === 'short')
			? { waitShare: 0 }
			: {})
	});
}

/** Doses given over those that the leaflet asks for, of reagents of some roles together. */
function extraDoses(
	{ kit, doses }: BenchState,
	isMeant: (role: Kit['reagents'][number]['role']) => boolean
): number {
	const meant = kit.reagents.filter(({ role }) => isMeant(role));
	const given = meant.reduce((sum, { id }) => sum + (doses[id] ?? 0), 0);
	const asked = meant.reduce((sum, reagent) => sum + askedDosesOf(reagent), 0);
	return Math.round(clamp(given - asked, asked));
}

/** Swirling as a plan has it: all of it, shared out over the drops that fell near the end. */
function swirlMsOf(state: BenchState): number {
	const { kit, drops, sampleContents, swirledS } = state;
	if (!sampleContents) return 0;
	const kind = kindOf(kit);
	const molPerL = titrantMolPerL(state);
	let volumeMl = 0;
	let near = 0;
	for (const drop of drops) {
		volumeMl += drop.volumeMl;
		if (!kind.isFar(kind.titratedTo(sampleContents, titrantPortion(kit, volumeMl, molPerL))))
			near++;
	}
	return near > 0 ? Math.round(Math.min(LONGEST_SWIRL_MS, (swirledS / near) * 1000)) : 0;
}
const LONGEST_SWIRL_MS = 8000;

const clamp = (value: number, limit: number) => Math.max(-limit, Math.min(limit, value));
const readOff = ({ readOff: off }: ReturnType<typeof accountOf>) =>
	Number((off.mistake + off.rim).toFixed(4));

/** Below this, what was in the ware is a trace of an older rinse, mL. */
const FILM_ML = 0.05;

/** What each ware was rinsed with last, from the film it left in the sample. */
function rinsing({ kit, sample }: BenchState): Pick<Plan, 'rinseVial' | 'rinseSampler'> {
	const byFilm = ({ volumeMl, meqPerL }: StrayWater) =>
		volumeMl <= FILM_ML ? 'sample' : meqPerL > 1 ? 'tap' : 'purified';
	// In a syringe's measure its own film takes room and the vial's comes on top.
	return kit.sample.measuredIn === 'syringe'
		? { rinseSampler: byFilm(sample.displacing), rinseVial: byFilm(sample.adding) }
		: { rinseSampler: 'sample', rinseVial: byFilm(sample.displacing) };
}

function filling(state: BenchState, made: ReadonlySet<SlipKind>): Partial<Plan> {
	const { delivery, kit, filledTo } = state;
	if (delivery.by !== 'syringe' || kit.delivery.by !== 'syringe' || !filledTo) return {};
	const full = kit.delivery.capacityMl;
	const isLoose = delivery.syringe.tip === 'loose';
	// The line that stood there when it was filled: as far below the seal as the cushion is long.
	const line = filledTo.sealMl - filledTo.cushionMl;
	const byLine = Math.abs(line - full) < Math.abs(filledTo.sealMl - full);
	const off = (byLine ? line : filledTo.sealMl) - full;
	return {
		fillBy: byLine ? 'line' : 'seal',
		fillOffMl: Number(clamp(off, 0.5).toFixed(4)),
		tipFitted: isLoose ? 'loose' : made.has('tipFittedLate') ? 'after' : 'before',
		airDrawnMl: made.has('airExpelled') ? Number(state.airPushedMl.toFixed(4)) : 0
	};
}
