import { parseScenario, type Scenario } from '$lib/bench';
import { houseKitOf, type Analyte } from '$lib/kits';
import { trainsOf, type Trains } from '$lib/procedure';

/** What a list shows of a scenario: nothing from which its hidden cause could be read. */
export type PracticeItem = {
	id: string;
	kind: 'drill' | 'case';
	title: string;
	minutes: number;
	kitName: string;
	/** What its kit is bought for. */
	measures: Analyte;
};

/** This file stays on the server: the truth of the scenarios must not reach a page that lists them. */
const files = import.meta.glob<string>('/scenarios/*.json', {
	eager: true,
	query: '?raw',
	import: 'default'
});

/** A scenario without its truth. */
export function itemOf({ id, kind, title, minutes, kitId }: Scenario): PracticeItem {
	const { name: kitName, analyte, byDifference } = houseKitOf(kitId);
	return { id, kind, title, minutes, kitName, measures: byDifference?.gives ?? analyte };
}

/** The test that nearly everybody begins with comes first. */
const measureOrder: readonly Analyte[] = ['alkalinity', 'calcium', 'magnesium', 'hardness'];

/** The place of an item in the list: drills, then cases, by what they measure, each from short to long. */
export function inListOrder(a: PracticeItem, b: PracticeItem): number {
	const rank = ({ kind, measures }: PracticeItem) =>
		(kind === 'drill' ? 0 : measureOrder.length) + measureOrder.indexOf(measures);
	return rank(a) - rank(b) || a.minutes - b.minutes || a.title.localeCompare(b.title, 'en');
}

/**
 * Scenario files as list items, in the order of the list.
 *
 * @throws RangeError naming file, field and what was expected, for a file that is no scenario: the
 *   site is then not built
 */
export function practiceItems(texts: Record<string, string> = files): PracticeItem[] {
	return scenariosIn(texts).map(itemOf).sort(inListOrder);
}

const scenariosIn = (texts: Record<string, string>): Scenario[] =>
	Object.entries(texts).map(([file, text]) => parseScenario(text, file.replace(/^\//, '')));

/** A drill as a debrief leads to it: with what it trains, in which titration. */
export type DrillItem = PracticeItem & { trains: Trains };

/** The drills, with what each trains; that of a case would tell what lies behind it. */
export function drillItems(texts: Record<string, string> = files): DrillItem[] {
	return scenariosIn(texts)
		.filter(({ kind }) => kind === 'drill')
		.map((scenario) => ({ ...itemOf(scenario), trains: trainsOf(scenario) }))
		.sort(inListOrder);
}
