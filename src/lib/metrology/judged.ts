/**
 * What JCGM 100 (GUM) makes of an input that nobody measured: a limit, a step or a judgement becomes a
 * standard uncertainty, and the doubt about it becomes degrees of freedom.
 */

/** Half-width of an even distribution as a standard uncertainty (JCGM 100:2008, 4.3.7). */
export const even = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/**
 * Half-width of a triangular distribution as a standard uncertainty (JCGM 100:2008, 4.3.9): the limit
 * that a maker must keep, where most pieces lie well inside it.
 */
export const triangular = (halfWidth: number): number => halfWidth / Math.sqrt(6);

/** Step of a scale, or one whole drop, as a standard uncertainty (JCGM 100:2008, F.2.2.1). */
export const step = (size: number): number => size / Math.sqrt(12);

/**
 * Degrees of freedom of a judged standard uncertainty that may itself be wrong by so much of it.
 * Source: JCGM 100:2008, eq. G.3: ν = ½ (Δu/u)^−2.
 *
 * @param relativeDoubt Δu/u, above 0; 0.25 means 'to a quarter'
 */
export function degreesOfDoubt(relativeDoubt: number): number {
	if (!(relativeDoubt > 0))
		throw new RangeError(`relativeDoubt must be above 0; found ${relativeDoubt}`);
	return 1 / (2 * relativeDoubt ** 2);
}

/** How far judged inputs are to be trusted, as Δu/u; this project's choice. */
export const DOUBT = {
	/** A limit of a standard, or a figure that the owner found. */
	sourced: 0.25,
	/** Common practice without a source. */
	unsourced: 0.5
};
