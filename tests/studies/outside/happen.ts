import type { Chance } from './chance';
import type { Mistake } from './mistake';
import { handMistakes } from './mistakes-hands';
import { oddMistakes } from './mistakes-odd';
import { thingMistakes } from './mistakes-things';
import { vialMistakes } from './mistakes-vial';
import { drawWorld, type World } from './world';

/** Shares of the kinds of case: our own choice. */
export const kindShares = { nothing: 0.25, one: 0.5, pair: 0.15, odd: 0.1 } as const;
export type CaseKind = keyof typeof kindShares;

export const listedMistakes: readonly Mistake[] = [
	...handMistakes,
	...vialMistakes,
	...thingMistakes
];
export { oddMistakes };

/** A mistake as it happened in one case. */
export type Happened = {
	mistake: Mistake;
	size: number;
	/** Made again and again, or in the test in question alone. */
	isHabit: boolean;
	/** Days since it is so; tests before that are free of it. */
	beganDaysAgo: number;
};

/** What is hidden in a case: the world, and as it was before anything went wrong. */
export type Hidden = { kind: CaseKind; world: World; before: World; happened: readonly Happened[] };

const kinds = Object.keys(kindShares) as CaseKind[];

/** Two mistakes go together if no plain fact would have to be answered in two ways. */
function goTogether(one: Mistake, other: Mistake): boolean {
	if (one.id === other.id) return false;
	const facts = new Set(Object.keys(one.facts?.(1) ?? {}));
	const isTwiceTheTank = one.class === 'water' && other.class === 'water';
	return !isTwiceTheTank && !Object.keys(other.facts?.(1) ?? {}).some((key) => facts.has(key));
}

function pickMistakes(kind: CaseKind, world: World, c: Chance): Mistake[] {
	if (kind === 'nothing') return [];
	const fitting = (list: readonly Mistake[]) => list.filter(({ fits }) => fits?.(world) ?? true);
	const first = c.weighted(
		fitting(kind === 'odd' ? oddMistakes : listedMistakes),
		({ weight }) => weight
	);
	if (kind !== 'pair') return [first];
	const others = fitting(listedMistakes).filter((other) => goTogether(first, other));
	return [first, c.weighted(others, ({ weight }) => weight)];
}

function beginningOf(mistake: Mistake, world: World, c: Chance): number {
	const bottleDays = world.lotAgeMonths * 30;
	if (mistake.id === 'badLot' || mistake.id === 'titrantEvaporated') return Math.max(1, bottleDays);
	return c.happens(0.4) ? 1000 : c.between(0, 7);
}

/** Draws what went wrong in a case, and makes it so. */
export function drawHidden(c: Chance): Hidden {
	const before = drawWorld(c);
	const kind = c.weighted(kinds, (name) => kindShares[name]);
	let world = { ...before, eventDaysAgo: c.between(1, 6) };
	const happened = pickMistakes(kind, world, c).map((mistake): Happened => {
		const size = mistake.size(c, world);
		world = {
			...world,
			...mistake.change?.(size, world),
			facts: { ...world.facts, ...mistake.facts?.(size) }
		};
		return {
			mistake,
			size,
			isHabit: mistake.clings !== 'slip' || c.happens(0.5),
			beganDaysAgo: beginningOf(mistake, world, c)
		};
	});
	return { kind, world, before, happened };
}
