/**
 * A probability as one would say it, never with decimals and never as certain: 'about 6 in 10'.
 *
 * @param probability within 0 to 1
 */
export function chanceWords(probability: number): string {
	if (probability < 0.02) return 'less than 1 in 50';
	if (probability < 0.075) return 'about 1 in 20';
	if (probability < 0.925)
		return `about ${Math.min(9, Math.max(1, Math.round(probability * 10)))} in 10`;
	if (probability < 0.98) return 'about 19 in 20';
	return 'more than 49 in 50';
}
