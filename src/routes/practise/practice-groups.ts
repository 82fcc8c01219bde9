import type { RunHeader } from '$lib/records';
import { triedOf } from '../kept-runs';
import type { PracticeItem } from '../practice-list.server';

/** Practice of one kind, by what is measured in it. */
export type PracticeGroup = {
	measures: string;
	title: string;
	/** How many there are, and how many were done. */
	words: string;
	items: PracticeItem[];
};

/** Items by what they measure, in the order in which that comes first among them. */
export function groupsOf(
	items: readonly PracticeItem[],
	runs: readonly RunHeader[]
): PracticeGroup[] {
	const kinds = [...new Set(items.map(({ measures }) => measures))];
	return kinds.map((measures) => {
		const own = items.filter((item) => item.measures === measures);
		const done = own.filter(({ id }) => triedOf(runs, id).state === 'done').length;
		return {
			measures,
			title: measures.charAt(0).toUpperCase() + measures.slice(1),
			words: `${own.length}${done > 0 ? `, ${done} done` : ''}`,
			items: own
		};
	});
}
