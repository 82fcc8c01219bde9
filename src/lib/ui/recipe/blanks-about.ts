import { substances, type MadeAnalyte } from '$lib/judgement';
import type { Blanks } from './blanks';

/** What is at hand whatever the solution is for. */
const SHARED = new Set(['scale', 'waterWay', 'syringe', 'litres']);
/** Of which the solution was made last, beside what was typed. */
const ABOUT = 'about';
/** Blanks kept before there was a choice are of alkalinity, and stand without its name. */
const FIRST: MadeAnalyte = 'alkalinity';

/** Under which name a blank is kept: what was typed for one thing says nothing of another. */
const keptName = (name: string, analyte: MadeAnalyte) =>
	analyte === FIRST || SHARED.has(name) ? name : `${analyte}:${name}`;

/** What is typed and chosen for a solution of an analyte, out of all that is kept. */
export function blanksAbout(kept: Blanks, analyte: MadeAnalyte): Blanks {
	const own = `${analyte}:`;
	return Object.fromEntries(
		Object.entries(kept).flatMap(([name, text]) => {
			if (name === ABOUT) return [];
			if (SHARED.has(name)) return [[name, text]];
			if (analyte === FIRST) return name.includes(':') ? [] : [[name, text]];
			return name.startsWith(own) ? [[name.slice(own.length), text]] : [];
		})
	);
}

/** All that is kept, with some blanks of an analyte changed. */
export function withBlanksAbout(kept: Blanks, analyte: MadeAnalyte, changed: Blanks): Blanks {
	return {
		...kept,
		...Object.fromEntries(
			Object.entries(changed).map(([name, text]) => [keptName(name, analyte), text])
		)
	};
}

/** What the solution made last was of; undefined where nobody said. */
export function keptAnalyte(kept: Blanks): MadeAnalyte | undefined {
	return Object.values(substances).find(({ analyte }) => analyte === kept[ABOUT])?.analyte;
}

/** All that is kept, and of what the solution is. */
export const withAnalyte = (kept: Blanks, analyte: MadeAnalyte): Blanks => ({
	...kept,
	[ABOUT]: analyte
});
