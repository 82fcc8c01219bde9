import type { Analyte, Unit } from '$lib/kits';
import { analyteName, unitName } from '$lib/kits/units';
import { summaryFor } from '$lib/observation/test-summary';
import type { CheckHeader, TestHeader } from '$lib/records';
import { shownIn } from '$lib/ui/log/in-unit';
import { ageWords } from '$lib/ui/log/log-words';
import type { HomeCheck, HomeReading } from './home-state';
import { isAnalyte, readFirst, soundSummary } from './sound-summary';

/** Tests as lines of the first page; those without a value are left out. */
export function homeReadings(
	headers: readonly TestHeader[],
	unitOf: (analyte: Analyte) => Unit,
	now: number
): HomeReading[] {
	return headers.flatMap(({ id, analyte, startedAtEpochMs, summary: stored }): HomeReading[] => {
		const whole = soundSummary(stored, analyte);
		if (!whole || !isAnalyte(analyte) || !Number.isFinite(startedAtEpochMs)) return [];
		const read = readFirst(whole, analyte);
		const summary = summaryFor(whole, analyte, read) ?? whole;
		const unit = unitOf(read);
		return [
			{
				id,
				name: analyteName(read, 'start'),
				...shownIn(summary, unit, read),
				unitName: unitName(unit, read),
				age: ageWords(startedAtEpochMs, now),
				isSuspect: summary.isSuspect
			}
		];
	});
}

/** A check as a line of the first page. */
export function homeCheck(
	{ id, analyte, where, summary }: CheckHeader,
	unitOf: (analyte: Analyte) => Unit
): HomeCheck {
	if (!isAnalyte(analyte)) return { id, where, value: null };
	const unit = unitOf(analyte);
	const shown = summary && Number.isFinite(summary.value) ? shownIn(summary, unit, analyte) : null;
	const taken = summary?.isUncertaintyTaken ? ' (± taken as usual)' : '';
	return {
		id,
		where,
		value: shown && `${shown.value} ± ${shown.band} ${unitName(unit, analyte)}${taken}`
	};
}
