import type { Fault, FaultScope } from '../catalogue/fault';
import { suits } from '../catalogue/suits';
import type { Model } from './model';
import { piecesOf, type Piece, type PieceContext } from './pieces';
import { maskOf, seatsOf } from './scope';
import type { SecondMethods } from './second-methods';

/** A fault in one thing: a second method's fault may sit in any of the instruments there are. */
export type Instance = {
	/** Place of the fault among the faults considered. */
	fault: number;
	lnOdds: number;
	pieces: Piece[];
};

/** Faults with ln of the odds of each, and the things that each may sit in. */
export type Considered = { faults: Fault[]; lnOdds: number[]; instances: Instance[] };

/** Faults that last may have been there before earlier readings, or have set in since; judgement. */
const lasting: readonly FaultScope[] = ['hands', 'sampleWare', 'titrantWare', 'lot', 'takenOff'];
const SET_IN_SINCE = 0.35;

/** Masks of a fault with their share of its prior: one, or two where it may have set in meanwhile. */
function masksOf(fault: Fault, model: Model, seat: string): { mask: Uint8Array; share: number }[] {
	const mask = maskOf(fault, model.rows, seat);
	const since = mask.map((isIn, i) => (model.rows[i]!.isEarlier ? 0 : isIn));
	if (!lasting.includes(fault.scope) || since.every((isIn, i) => isIn === mask[i]))
		return [{ mask, share: 1 }];
	return [
		{ mask, share: 1 - SET_IN_SINCE },
		{ mask: since, share: SET_IN_SINCE }
	];
}

/** A prior under a name that no fault has would be passed over in silence. */
function requireKnown(priors: Readonly<Record<string, number>>, faults: readonly Fault[]): void {
	const ids = new Set(faults.map(({ id }) => id));
	const unknown = Object.keys(priors).find((id) => !ids.has(id));
	if (unknown !== undefined)
		throw new RangeError(
			`priors must be by ids of ${[...ids].sort().join(', ')}; found ${unknown}`
		);
}

/**
 * Every fault that this evidence can have, in every thing it can sit in.
 *
 * @throws RangeError naming a prior that is of no fault, or out of its range
 */
export function considered(
	faults: readonly Fault[],
	priors: Readonly<Record<string, number>>,
	context: PieceContext,
	seconds: SecondMethods
): Considered {
	requireKnown(priors, faults);
	const found: Considered = { faults: [], lnOdds: [], instances: [] };
	const sorted = [...faults].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
	const { model } = context;
	const read = model.rows.slice(0, model.count);
	for (const fault of sorted) {
		const prior = priors[fault.id] ?? fault.prior;
		if (!(prior >= 0 && prior < 1))
			throw new RangeError(`prior of ${fault.id} must be 0 or above and below 1; found ${prior}`);
		if (prior === 0 || !suits(fault, context.method)) continue;
		const seats = seatsOf(fault.scope, read).filter(
			(seat) => fault.scope !== 'instrument' || seconds.canHave(seat, fault.methods)
		);
		// A fault of what nobody used is no account of anything; the water may always have changed.
		const touches = (mask: Uint8Array) =>
			fault.scope === 'tank' || mask.slice(0, model.count).some((isIn) => isIn === 1);
		const instances = seats.flatMap((seat) =>
			masksOf(fault, model, seat)
				.filter(({ mask }) => touches(mask))
				.map(({ mask, share }) => ({
					fault: found.faults.length,
					lnOdds: Math.log(prior / (1 - prior)) + Math.log(share),
					pieces: piecesOf(fault, mask, context)
				}))
		);
		if (!instances.some(({ pieces }) => pieces.length > 0)) continue;
		found.faults.push(fault);
		found.lnOdds.push(Math.log((seats.length * prior) / (1 - prior)));
		found.instances.push(...instances.filter(({ pieces }) => pieces.length > 0));
	}
	return found;
}
