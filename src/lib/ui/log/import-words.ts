import type { ImportReport } from '$lib/records';

const things = (n: number) => `${n} ${n === 1 ? 'record' : 'records'}`;
const apart = {
	diverged: 'another of the same name is here and says something else',
	damaged: 'only a part could be saved'
};

/** How an import went, in sentences, the plain outcome first. */
export function importWords(report: ImportReport): string[] {
	const { added, grown, already, keptApart, damaged, refused } = report;
	if (added + grown + already + damaged.length + refused.length === 0)
		return ['The file holds no records: nothing was added.'];
	return [
		`Added: ${things(added)}.`,
		...(grown > 0 ? [`Grown: ${things(grown)} of which the file knew more.`] : []),
		...(already > 0 ? [`Already here: ${things(already)}, left as they are.`] : []),
		...keptApart.map(({ where, because }) => `Kept apart: ${where}; ${apart[because]}.`),
		...damaged.map(({ where, problem }) => `Damaged at ${where}: ${problem}.`),
		...refused.map((each) =>
			each.because === 'elsewhere'
				? `Not taken: ${each.where}; another window has gone on with it.`
				: `Not taken: ${each.where}; ${each.detail}.`
		)
	];
}
