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

/** All scenarios as list items: drills, then cases, each from short to long. */
export function practiceItems(): PracticeItem[] {
	return Object.values(files)
		.map(itemOf)
		.sort(
			(a, b) =>
				(a.kind === b.kind ? 0 : a.kind === 'drill' ? -1 : 1) ||
				a.minutes - b.minutes ||
				a.title.localeCompare(b.title, 'en')
		);
}
