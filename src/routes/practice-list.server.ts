import { ScenarioSchema } from '$lib/bench';
import { houseKits } from '$lib/kits';

/** What a list shows of a scenario: nothing from which its hidden cause could be read. */
export type PracticeItem = {
	id: string;
	kind: 'drill' | 'case';
	title: string;
	minutes: number;
	kitName: string;
};

/** This file stays on the server: the truth of the scenarios must not reach a page that lists them. */
const files = import.meta.glob<unknown>('/scenarios/*.json', { eager: true, import: 'default' });

/** A scenario without its truth. */
export function itemOf(scenario: unknown): PracticeItem {
	const { id, kind, title, minutes, kitId } = ScenarioSchema.parse(scenario);
	const kitName = houseKits.find((kit) => kit.id === kitId)?.name ?? kitId;
	return { id, kind, title, minutes, kitName };
}

/** Where somebody who has never seen a drop fall begins; on top of the list when it is there. */
const FIRST_ID = 'first-drop';

/** The place of an item in the list: the first drill, drills, cases; each kind from short to long. */
export function inListOrder(a: PracticeItem, b: PracticeItem): number {
	const rank = ({ id, kind }: PracticeItem) => (id === FIRST_ID ? 0 : kind === 'drill' ? 1 : 2);
	return rank(a) - rank(b) || a.minutes - b.minutes || a.title.localeCompare(b.title, 'en');
}

/** All scenarios as list items, in the order of the list. */
export function practiceItems(): PracticeItem[] {
	return Object.values(files).map(itemOf).sort(inListOrder);
}
