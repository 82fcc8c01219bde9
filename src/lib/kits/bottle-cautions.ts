import type { Kit } from './kit';

/** Kinds of bottle in a kit, by what they can do to whoever uses them. */
const kinds = ['strongAcid', 'base', 'ammoniaBuffer', 'indicator'] as const;
type BottleKind = (typeof kinds)[number];

/**
 * What is to be said of each. Hydroxide of 0.5 mol/L and more burns, dilute acid irritates, an ammonia buffer
 * gives off ammonia, a metal or pH dye stains: textbook; the bottle's own label comes before it.
 */
const cautions: Record<BottleKind, string> = {
	strongAcid: 'The titrant for alkalinity is acid.',
	base: 'The base for calcium is sodium hydroxide or the like: it burns eyes and skin. Wear goggles. It is for adults, or with an adult beside.',
	ammoniaBuffer:
		'The buffer for magnesium gives off ammonia: open a window, and do not breathe over it.',
	indicator: 'The indicators stain.'
};

/** Kinds of bottle that a kit has. EDTA is not among them: it is a titrant of little harm. */
function kindsIn({ contents, reagents }: Kit): string[] {
	const forPh = Object.values(contents?.phReagents ?? {}).map(({ kind }) => kind);
	const roles = reagents.map(({ role }) => role);
	return [contents?.titrant.kind ?? '', ...forPh, ...roles];
}

/** What to beware of in the bottles of some kits, each kind once, in one order. */
export function bottleCautions(kits: readonly Kit[]): string[] {
	const there = new Set(kits.flatMap(kindsIn));
	return kinds.filter((kind) => there.has(kind)).map((kind) => cautions[kind]);
}
