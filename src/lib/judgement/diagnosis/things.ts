import type { CheckId, Differs } from '../../observation';

/**
 * By which ware, bottles, hands and waters a reading came about. Two readings with one name share the
 * thing, and what is wrong with it; null where there is no such thing.
 */
export type Things = {
	lot: string | null;
	hands: string | null;
	sampleWare: string | null;
	titrantWare: string | null;
	kit: string | null;
	sampling: string | null;
	instrument: string | null;
	solution: string | null;
	/** The value taken off; it has a part only where the method is a difference. */
	takenOff: string | null;
};

/** The things of the test in question. Names given by people stand behind a colon, and cannot meet it. */
export const OWN = 'own';
const named = (name: string | undefined, otherwise: string) =>
	name === undefined ? otherwise : `named:${name}`;

export const nothing: Things = {
	lot: null,
	hands: null,
	sampleWare: null,
	titrantWare: null,
	kit: null,
	sampling: null,
	instrument: null,
	solution: null,
	takenOff: null
};

/** Things of a test by the kit in question; what `from` implies need not be said in `differs`. */
export function thingsOfTest(differs: Differs | undefined, from: 'first' | CheckId): Things {
	const implied = (check: CheckId) => (from === check ? 'other' : OWN);
	return {
		...nothing,
		kit: OWN,
		lot: named(differs?.lot, implied('freshLot')),
		hands: named(differs?.hands, implied('otherHands')),
		sampleWare: named(differs?.sampleWare, OWN),
		titrantWare: named(differs?.titrantWare, OWN),
		sampling: named(differs?.sampling, implied('freshSample')),
		takenOff: implied('takenOffAnew')
	};
}

/** Volume of the sample over that of the test in question. */
export function sampleRatioOf(differs: Differs | undefined, from: 'first' | CheckId): number {
	const implied = from === 'largerSample' ? 2 : from === 'smallerSample' ? 0.5 : 1;
	return differs?.sampleRatio ?? implied;
}
