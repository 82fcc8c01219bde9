import type { Remark, RemarkOptions } from './tank-remark';
import { endRemarks } from './tank-remarks-end';
import { fillingRemarks } from './tank-remarks-filling';
import { preparingRemarks } from './tank-remarks-preparing';
import { readingRemarks } from './tank-remarks-reading';
import { tipRemarks } from './tank-remarks-tip';
import { titrantRemarks } from './tank-remarks-titrant';
import { titratingRemarks } from './tank-remarks-titrating';
import { valueRemarks } from './tank-remarks-value';
import { lightRemarks, waterRemarks } from './tank-remarks-water';
import { sightOf } from './tank-sight';
import type { TankTitration } from './tank-test';

/**
 * What is worth saying about a titration beside the tank now, most pressing first: warnings before
 * the rest, and of these what the hands are at. Handling is spoken of at once, judgement only when
 * the person has declared the thing it is about; nothing depends on how near the end is. What was
 * not noted is never held against anybody.
 */
export function remarksOn(titration: TankTitration, options: RemarkOptions): Remark[] {
	const { walk } = titration;
	if (walk.status === 'done' && walk.value === 'abandoned') return [];
	const sight = sightOf(titration, options);
	const remarks = [
		...readingRemarks(sight),
		...valueRemarks(sight),
		...endRemarks(sight),
		...titratingRemarks(sight),
		...tipRemarks(sight),
		...fillingRemarks(sight),
		...titrantRemarks(sight),
		...preparingRemarks(sight),
		...lightRemarks(sight),
		...waterRemarks(sight)
	];
	return [
		...remarks.filter(({ tone }) => tone === 'warn'),
		...remarks.filter(({ tone }) => tone === 'say')
	];
}
