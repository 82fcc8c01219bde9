import type { Components } from './components';
import {
	before,
	lnOfOne,
	lnOfTwo,
	seenAll,
	sizedOf,
	type Background,
	type Enumeration,
	type ShiftPart
} from './enumeration';
import { productOf, seenBy, type Seen } from './gaussian';
import { ordinaryWorld } from './model';
import { UNFORESEEN } from './parts';
import { blankShifted, integrate } from './shifts';

/** Products of all directions with each other, as an account sees them. */
function productsOf(seen: readonly Seen[]): Float64Array {
	const width = seen.length;
	const products = new Float64Array(width * width);
	for (let a = 0; a < width; a++)
		for (let b = 0; b <= a; b++) {
			products[a * width + b] = productOf(seen[a]!, seen[b]!);
			products[b * width + a] = products[a * width + b]!;
		}
	return products;
}

/** One shift. */
export function enumerateShifts(
	input: Enumeration,
	shifts: readonly ShiftPart[],
	components: Components
): void {
	const { places, directions, accounts } = input;
	const account = accounts.of(ordinaryWorld);
	const seen = seenAll(account, directions);
	const into = blankShifted();
	for (const shift of shifts) {
		const { part, at } = shift;
		integrate(account, sizedOf(shift, seen), null, 0, into);
		const lnWeight = lnOfOne(input, part) + into.lnLikelihood;
		components.add(lnWeight, into, places.one(part.fault), at, -1, -1, -1);
	}
}

/** Two shifts. */
export function enumerateTwoShifts(
	input: Enumeration,
	shifts: readonly ShiftPart[],
	background: Background,
	components: Components
): void {
	const { places, directions, accounts } = input;
	const account = accounts.of(before(ordinaryWorld, background) ?? ordinaryWorld);
	const seen = seenAll(account, directions);
	const products = productsOf(seen);
	const width = seen.length;
	const sized = shifts.map((shift) => sizedOf(shift, seen));
	const into = blankShifted();
	for (let i = 0; i < shifts.length; i++) {
		const { part: one, at: at1 } = shifts[i]!;
		for (let j = 0; j < i; j++) {
			const { part: two, at: at2 } = shifts[j]!;
			const ln = lnOfTwo(input, one, two);
			if (ln === null) continue;
			const product = products[one.piece.direction * width + two.piece.direction]!;
			integrate(account, sized[i]!, sized[j]!, product, into);
			const place = places.two(one.fault, two.fault);
			components.add(ln + into.lnLikelihood, into, place, at1, -1, at2, -1);
		}
	}
}

/** What is in no list: shifts of any size, each in a world where everything scatters more. */
export function enumerateUnforeseen(input: Enumeration, components: Components): void {
	const { parts, accounts, directions, places, unforeseen } = input;
	const account = accounts.of(unforeseen);
	const into = blankShifted();
	parts.forEach((part, at) => {
		if (part.fault !== UNFORESEEN || part.piece.kind !== 'shift') return;
		const { direction, mean, variance, lnWeight } = part.piece;
		const seen = seenBy(account, directions.all[direction]!);
		integrate(account, { seen, mean, variance }, null, 0, into);
		const whole = part.lnOdds + lnWeight + into.lnLikelihood;
		components.add(whole, into, places.noneOfThese, at, -1, -1, -1);
	});
}
