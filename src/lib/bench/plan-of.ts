import type { Marks, Slip } from '../observation';
import { accountOf } from './account';
import type { Plan } from './plan';
import { PlanSchema } from './plan';
import type { BenchState } from './state';

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
	const doses = kit.reagents.reduce((sum, reagent) => sum + (state.doses[reagent.id] ?? 0), 0);
	const asked = kit.reagents.reduce(
		(sum, reagent) => sum + (reagent.dose.unit === 'mL' ? 1 : reagent.dose.amount),
		0
	);
	const stray = state.sample.displacing.volumeMl > 0.05 || state.sample.adding.volumeMl > 0.05;
	const lagDrops = account.lagMl / kit.delivery.dropMl - 0.5;
	const perDropS = state.drops.length > 0 ? state.swirledS / Math.min(10, state.drops.length) : 2;
	const nominalMl = account.nominalSampleMl;
	return PlanSchema.parse({
		volumeId: state.volumeId,
		rinseSampler: stray ? 'purified' : 'sample',
		rinseVial: 'sample',
		sampleOffMl: clamp(state.sample.markMl - nominalMl, nominalMl / 2),
		sampleAirMl: state.sample.airMl,
		extraIndicator: Math.round(clamp(doses - asked, asked)),
		...filling(state),
		wiped: !made.has('hangingAtStart'),
		swirlMs: Math.round(Math.min(6000, perDropS * 1000)),
		dropsPastEnd: Math.abs(lagDrops) < 1 ? 0 : Math.round(clamp(lagDrops, 20)),
		touchedOff: delivery.hangingMl === 0,
		...(delivery.by === 'dropper'
			? { tiltDegrees: delivery.tiltDegrees, squeezedHard: delivery.squeezedHard }
			: {}),
		readBy: account.readBy === 'line' ? 'line' : 'seal',
		readOff: made.has('misread') || made.has('wrongRim') ? readOff(account) : 0,
		scaleReversed: account.isReversed
	});
}

const clamp = (value: number, limit: number) => Math.max(-limit, Math.min(limit, value));
const readOff = ({ readOff: off }: ReturnType<typeof accountOf>) =>
	Number((off.mistake + off.rim).toFixed(4));

function filling(state: BenchState): Partial<Plan> {
	const { delivery, kit, filledTo } = state;
	if (delivery.by !== 'syringe' || kit.delivery.by !== 'syringe' || !filledTo) return {};
	const full = kit.delivery.capacityMl;
	// The line that stood there when it was filled: as far below the seal as the cushion is long.
	const line = filledTo.sealMl - filledTo.cushionMl;
	const byLine = Math.abs(line - full) < Math.abs(filledTo.sealMl - full);
	const off = (byLine ? line : filledTo.sealMl) - full;
	return {
		fillBy: byLine ? 'line' : 'seal',
		fillOffMl: Number(clamp(off, 0.5).toFixed(4)),
		tipFitted:
			delivery.syringe.tip === 'loose' ? 'loose' : state.airPushedMl > 0.02 ? 'after' : 'before'
	};
}
