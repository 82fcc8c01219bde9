import { differenceCiede2000 } from 'culori/fn';
import type { Lab } from './colour';

const ciede2000 = differenceCiede2000();

/** CIEDE2000 difference of two CIELAB colours (Sharma, Wu & Dalal 2005); about 1 is just visible side by side. */
export function colourDifference(
	one: Pick<Lab, 'l' | 'a' | 'b'>,
	other: Pick<Lab, 'l' | 'a' | 'b'>
): number {
	return ciede2000(
		{ mode: 'lab65', l: one.l, a: one.a, b: one.b },
		{ mode: 'lab65', l: other.l, a: other.a, b: other.b }
	);
}
