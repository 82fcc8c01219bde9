import type { Analyte, Unit } from '$lib/kits';
import { unitName } from '$lib/kits/units';
import type { CheckHeader, TestHeader } from '$lib/records';
import { shownIn } from '$lib/ui/log/in-unit';
import { ageWords } from '$lib/ui/log/log-words';
import type { HomeCheck, HomeReading } from './home-state';
import { soundSummary, unitFor } from './sound-summary';

/** Tests as lines of the first page; those without a value are left out. */
export function homeReadings(
	headers: readonly TestHeader[],
	preferred: Unit,
	now: number
): HomeReading[] {
	return headers.flatMap(({ id, analyte, startedAtEpochMs, summary: stored }): HomeReading[] => {
		const summary = soundSummary(stored);
		if (!summary || !Number.isFinite(startedAtEpochMs)) return [];
		const unit = unitFor(analyte as Analyte, preferred);
		return [
			{
				id,
				...shownIn(summary, unit),
				unitName: unitName(unit),
				age: ageWords(startedAtEpochMs, now),
				isSuspect: summary.isSuspect
			}
		];
	});
}

/** A check as a line of the first page. */
export function homeCheck(
	{ id, analyte, where, summary }: CheckHeader,
	preferred: Unit
): HomeCheck {
	const unit = unitFor(analyte as Analyte, preferred);
	const shown = summary && Number.isFinite(summary.value) ? shownIn(summary, unit) : null;
	return { id, where, value: shown && `${shown.value} ± ${shown.band} ${unitName(unit)}` };
}
