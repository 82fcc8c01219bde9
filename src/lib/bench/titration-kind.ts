import type { Titrant, VialChemistry } from '../chemistry';
import type { Kit } from '../kits';
import { acidKind } from './kind-acid';
import { edtaKind } from './kind-edta';
import type { VialContents } from './vial-contents';
import type { Water } from './world';

/** What time and motion have done to the contents of a vial by some moment, as plain shares. */
export type Passed = Readonly<Record<string, number>>;

/** Seconds of standing or swirling, the CO2 that leaves meanwhile, and what lies at the bottom. */
export type Passage = {
	seconds: number;
	isSwirled: boolean;
	/** Share of the carbon dioxide above air that leaves meanwhile, 0 to 1. */
	carbonDioxideShare: number;
	/** Calcium carbonate grains in the vial, mol. */
	grainsMol: number;
};

/**
 * One kind of titration as the bench plays it: the chemistry of its vial, and what the bench asks
 * beside. Nothing else on the bench knows what is titrated with what.
 */
export type TitrationKind<Contents = VialContents> = VialChemistry<Contents> & {
	/** A measured volume of a water. */
	fill(water: Water, volumeMl: number): Contents;
	massKgOf(contents: Contents): number;
	/** Everything that passes by itself, the grains with it. */
	pass(contents: Contents, passage: Passage): { contents: Contents; grainsMol: number };
	/** With grains of calcium carbonate as far as they have dissolved, mol. */
	withDissolvedGrains(contents: Contents, grainsMol: number): Contents;
	/** With so much titrant, all of it mixed in and come to rest. */
	titratedTo(contents: Contents, titrant: Titrant): Contents;
	/** How far the colour has come on its way, as a number that only grows; `endPlaceOf` on the same way. */
	placeOnTheWay(contents: Contents): number;
	endPlaceOf(kit: Kit): number;
	/** Time constant with which the colour comes after titrant that is mixed in, s; 0 where it comes at once. */
	showsInSeconds(contents: Contents): number;
	/** A fall in place that an eye sees beside what it remembers. */
	fadedBy: number;
	/** Titrant, in multiples of what the sample takes at most, at which an end is looked for first. */
	looksForEndAt: readonly number[];
	/** Still far from the end: a hand lets drops follow each other. */
	isFar(contents: Contents): boolean;
	/** What time and motion did between two states of one vial. */
	passedBetween(start: Contents | null, stop: Contents | null): Passed;
	/** Other doses of reagents would have made other things pass: a precipitate follows them, lost CO2 does not. */
	passedFollowsDoses: boolean;
	/** A sample as it comes to its end after so much has passed. */
	withPassed(start: Contents, passed: Passed): Contents;
	/** The same on the way there, after a share of the titrant, 0 to 1. */
	onTheWay(start: Contents, passed: Passed, share: number): Contents;
	/** What a probe in the vial would show, and what that is called. */
	readout: { name: string; of(contents: Contents): number };
	/** The states on the way of the colour by a titrant of any volume: from the start to well past any end. */
	wayOf(start: Contents, titrant: Titrant, points: number): Contents[];
};

const kinds = { strongAcid: acidKind, edta: edtaKind } satisfies Record<
	NonNullable<Kit['contents']>['titrant']['kind'],
	TitrationKind
>;

/**
 * The kind of titration of a kit.
 *
 * @throws RangeError naming `kit` when it does not say what is in its bottles
 */
export function kindOf(kit: Kit): TitrationKind {
	if (!kit.contents)
		throw new RangeError(
			`kit must say what is in its bottles (contents) to be used on the practice bench; found none in ${kit.id}`
		);
	return kinds[kit.contents.titrant.kind];
}
