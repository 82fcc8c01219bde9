/**
 * Calcium lost to carbonate in an open alkaline vial that stands. Carbonate of the sample, of the base and
 * of the air grows on the floc of magnesium hydroxide and is slow to give its calcium back. Growth from a
 * supersaturated solution begins late, and slows as the places for it fill up. Both go by how much solid
 * has stood for how long beside calcium that EDTA does not hold ("standing", mol s/L): with half the solid
 * or half the calcium open, all of it takes twice as long. In undiluted seawater the solid is 0.05 mol/L.
 * How much carbonate there is, is not followed: seawater alone holds several times what is lost so.
 */
export type CarbonateGrowthConstants = {
	/**
	 * Standing before any growth, mol s/L. 15: judgement, 5 minutes in undiluted seawater, so that prompt
	 * hands lose nothing. Low confidence.
	 */
	carbonateInductionMolSPerL: number;
	/** Standing in which what growth is left falls to 1/e, mol s/L. 50: judgement, a quarter of an hour. Low confidence. */
	carbonateGrowthMolSPerL: number;
	/**
	 * What is lost in the end, as −ln of the share of calcium left. 0.035: judgement; with the two above about
	 * 0.9 % in 10 and 2.7 % in 30 minutes in undiluted seawater (common practice, no source: 1 to 3 % for long
	 * standing). Low confidence.
	 */
	carbonateMost: number;
};

/**
 * −ln of the share of calcium that carbonate has left after so much standing: 0 until growth begins. What
 * one span of time takes is the difference of two of these, however it is cut.
 *
 * @param standingMolSPerL 0 to Infinity
 */
export function carbonateLoss(
	standingMolSPerL: number,
	constants: CarbonateGrowthConstants
): number {
	const grown = standingMolSPerL - constants.carbonateInductionMolSPerL;
	if (!(grown > 0)) return 0;
	return -constants.carbonateMost * Math.expm1(-grown / constants.carbonateGrowthMolSPerL);
}
