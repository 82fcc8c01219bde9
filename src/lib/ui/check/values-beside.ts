import { unitOf, analyteName } from '$lib/kits';
import {
	relatedInOrder,
	relatedQuantities,
	type RelatedQuantity,
	type RelatedValue
} from '$lib/observation';
import { plain, withUncertainty } from '../charts/numbers';

/** One value beside the reading, in words. */
export type BesideRow = {
	id: string;
	/** 'today, a hydrometer'. */
	when: string;
	value: string;
	/** Against the first of its kind: '−12 %'; empty for the first. */
	change: string;
	note: string | null;
};
export type BesideGroup = { of: RelatedQuantity; title: string; rows: BesideRow[] };

const dayWords = (days: number) =>
	days === 0 ? 'Today' : days === 1 ? 'Yesterday' : `${plain(days, 0)} days ago`;

function decimalsOf({ of, unit }: RelatedValue): number {
	return of === 'salinity' || !unit ? 1 : unitOf(unit, of).decimals;
}

function titleOf({ of, unit }: RelatedValue): string {
	return of === 'salinity' || !unit ? 'Salinity' : `${analyteName(of, 'start')}, ${unit}`;
}

function changeWords(first: RelatedValue, value: RelatedValue): string {
	if (first === value || first.unit !== value.unit) return '';
	const percent = Math.round((value.value / first.value - 1) * 100);
	if (percent === 0) return 'no change';
	return `${percent > 0 ? '+' : '−'}${Math.abs(percent)} %`;
}

/** Values of the tank beside the reading, by what they are of, each kind from the first to the latest. */
export function besideGroups(related: readonly RelatedValue[]): BesideGroup[] {
	return relatedQuantities.flatMap((of) => {
		const values = relatedInOrder(related, of);
		const [first] = values;
		if (!first) return [];
		const rows = values.map((each) => ({
			id: each.id,
			when: `${dayWords(each.daysAgo)}, ${each.label}`,
			value: withUncertainty(each.value, each.expandedUncertainty, decimalsOf(each)),
			change: changeWords(first, each),
			note: each.note
		}));
		return [{ of, title: titleOf(first), rows }];
	});
}
