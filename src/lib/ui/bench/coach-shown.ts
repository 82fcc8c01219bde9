import { coachLines, type CoachingWay, type CoachLine, type TitrationRun } from '$lib/procedure';

/**
 * What the coach's box shows: what stops the hand now, else a remark on something done during this step
 * (or still to be put right), else what the step asks. Older remarks have been heard.
 */
export function coachShown(titration: TitrationRun, way: CoachingWay): CoachLine[] {
	const { stepSince } = titration.walk.context;
	const isFresh = (line: CoachLine) => {
		if (!line.slip || line.slip.provisional) return true;
		const entryId = line.slip.entryId;
		const at = titration.events.find((each) => each.id === entryId)?.at;
		return at === undefined || at >= stepSince;
	};
	const lines = coachLines(titration, way).filter(isFresh);
	const stop = lines.find((line) => line.isStop);
	if (stop) return [stop];
	const warning = lines.find((line) => line.tone === 'warn');
	return warning ? [warning] : lines.filter((line) => line.tone === 'say').slice(0, 2);
}
