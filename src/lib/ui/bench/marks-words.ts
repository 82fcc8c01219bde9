import type { Marks } from '$lib/observation';

/** What was read off, as a record has it. */
export function marksInWords(marks: Marks): string {
	const parts: string[] = [];
	if (marks.sealMl !== undefined) parts.push(`seal at ${marks.sealMl.toFixed(2)}`);
	if (marks.lineMl !== undefined) parts.push(`liquid line at ${marks.lineMl.toFixed(2)}`);
	if (marks.levelMl !== undefined) parts.push(`level at ${marks.levelMl.toFixed(2)}`);
	if (marks.drops !== undefined) parts.push(`${marks.drops} drops`);
	return parts.join(', ');
}
