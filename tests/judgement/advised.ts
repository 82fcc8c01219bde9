import { decide, diagnoseAndRank, type DecideInput } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';

/** From what was read to what to do, as the check does it. */
export function adviceOn(evidence: readonly Evidence[], more: Partial<DecideInput> = {}) {
	const { diagnosis, ranking } = diagnoseAndRank(evidence);
	const decision = decide({
		diagnosis,
		band: { low: 7, high: 9, unit: 'dKH' },
		livestock: 'notLooked',
		next: ranking.next,
		ranked: ranking.ranked,
		isEnough: ranking.isEnough,
		salinity: 35,
		...more
	});
	return { decision, ranking, diagnosis };
}
