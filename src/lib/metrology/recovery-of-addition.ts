import type { Recovery } from './compare';

export type AdditionRecoveryInput = {
	/** Found with the addition and without it, in one unit; the first already corrected for the volume that came in. */
	withAddition: number;
	without: number;
	/** Rise that the addition makes in the sample, above 0. */
	added: number;
	/**
	 * Standard uncertainties. Of the two found: their scatter alone, since what lasts is in both and is
	 * what recovery looks for.
	 */
	withAdditionStandardUncertainty: number;
	withoutStandardUncertainty: number;
	addedStandardUncertainty: number;
};

/**
 * Recovery of a known addition: R = (with − without)/added. Other than 1 for a proportional error; a
 * constant one, and what borate or the kit's end colour make of the water, take themselves out.
 *
 * Source: u(R) = √(u²(with) + u²(without) + (R u(added))²)/added, law of propagation (JCGM 100:2008,
 * eq. 10); 'off' beyond twice that (EURACHEM/CITAC, from memory).
 *
 * @throws RangeError naming the field that is out of range
 */
export function recoveryOfAddition(input: AdditionRecoveryInput): Recovery {
	for (const field of ['withAddition', 'without'] as const)
		if (!Number.isFinite(input[field]))
			throw new RangeError(`${field} must be a number; found ${input[field]}`);
	if (!(input.added > 0 && Number.isFinite(input.added)))
		throw new RangeError(`added must be above 0; found ${input.added}`);
	for (const field of [
		'withAdditionStandardUncertainty',
		'withoutStandardUncertainty',
		'addedStandardUncertainty'
	] as const)
		if (!(input[field] >= 0 && Number.isFinite(input[field])))
			throw new RangeError(`${field} must be 0 or above; found ${input[field]}`);
	const recovery = (input.withAddition - input.without) / input.added;
	const standardUncertainty =
		Math.hypot(
			input.withAdditionStandardUncertainty,
			input.withoutStandardUncertainty,
			recovery * input.addedStandardUncertainty
		) / input.added;
	return {
		recovery,
		standardUncertainty,
		isOff: Math.abs(recovery - 1) > 2 * standardUncertainty
	};
}
