import type { Declared } from '../bench';
import { countedMark } from './counted-mark';
import { lastOf } from './event-queries';
import type { TitrationRun } from './titration-run';

/**
 * What a finished titration declared: its value, and of the marks the one that the value was made
 * of. Null while one of them is missing.
 */
export function declaredOf({ bench, events }: TitrationRun): Declared | null {
	const read = lastOf(events, 'marks.read');
	const reported = lastOf(events, 'value.reported');
	if (!read || !reported) return null;
	const { marks } = read.event;
	const by = countedMark(bench.kit, events)?.by;
	const counted =
		by === 'seal' || by === 'line'
			? { ...marks, sealMl: undefined, lineMl: undefined, [`${by}Ml`]: marks[`${by}Ml`] }
			: marks;
	return { marks: counted, value: reported.event.value };
}
