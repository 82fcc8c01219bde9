import type { Evidence } from '../../observation';
import { analyse } from '../diagnosis/analysis';
import { diagnosisOf } from '../diagnosis/diagnose';
import type { Diagnosis } from '../diagnosis/diagnosis';
import { foreseenChecks } from '../diagnosis/possible-tests';
import { rankingOf } from './rank';
import type { CheckRanking, RankOptions } from './ranked-check';

/**
 * Both at once for the price of one: `diagnose` and `rankChecks` say the same when called by
 * themselves, and each works the evidence out anew.
 *
 * @throws RangeError as they do
 */
export function diagnoseAndRank(
	evidence: readonly Evidence[],
	options: RankOptions = {}
): { diagnosis: Diagnosis; ranking: CheckRanking } {
	const analysis = analyse(evidence, options, foreseenChecks(evidence));
	return { diagnosis: diagnosisOf(analysis), ranking: rankingOf(analysis, options) };
}
