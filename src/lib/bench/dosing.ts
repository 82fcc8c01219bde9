import { agedBase, type Reagent } from '../chemistry';
import type { Kit } from '../kits';
import { kindOf } from './titration-kind';
import type { VialContents } from './vial-contents';
import type { ReagentTruth, Truth } from './world';

/** What is in the bottles besides titrant, over what the leaflet takes for granted. */
export type Bottles = { indicatorFactor: number; reagents: ReagentTruth };

export const nominalBottles: Bottles = { indicatorFactor: 1, reagents: {} };

export const bottlesOf = ({ indicator, reagents }: Truth): Bottles => ({
	indicatorFactor: indicator?.strengthFactor ?? 1,
	reagents: reagents ?? {}
});

type Each<Kind> = Extract<Reagent, { kind: Kind }>;

/** A reagent as it really is. */
const really: {
	[Kind in Reagent['kind']]: (reagent: Each<Kind>, truth: ReagentTruth) => Reagent;
} = {
	base: (reagent, { base }) => {
		if (!base) return reagent;
		const fresh = {
			hydroxideMolPerL: reagent.hydroxideMolPerL * base.strengthFactor,
			carbonateMolPerL: reagent.carbonateMolPerL * base.strengthFactor
		};
		return {
			...reagent,
			...agedBase(fresh, (base.carbonatedShare * fresh.hydroxideMolPerL) / 2)
		};
	},
	ammoniaBuffer: (reagent, { ammoniaBuffer }) => {
		if (!ammoniaBuffer) return reagent;
		const { ammoniaMolPerL, ammoniumMolPerL } = reagent;
		const all = ammoniaMolPerL + ammoniumMolPerL;
		const ratio = (ammoniaMolPerL / ammoniumMolPerL) * 10 ** ammoniaBuffer.phOff;
		return {
			...reagent,
			ammoniaMolPerL: (all * ratio) / (1 + ratio),
			ammoniumMolPerL: all / (1 + ratio)
		};
	}
};

/** Volume of one dose that is given at a time: a drop, a spoonful, or the mL in one. */
function doseMl({ dose }: Kit['reagents'][number]): number {
	return dose.unit === 'mL' ? dose.amount : (dose.unitMl ?? 0.03);
}

/** Doses that the leaflet asks for. */
export const askedDosesOf = ({ dose }: Kit['reagents'][number]): number =>
	dose.unit === 'mL' ? 1 : dose.amount;

/** @throws RangeError naming `reagentId` when the kit has none of that id */
export function reagentOf(kit: Kit, reagentId: string): Kit['reagents'][number] {
	const reagent = kit.reagents.find(({ id }) => id === reagentId);
	if (!reagent)
		throw new RangeError(
			`reagentId must be one of ${kit.reagents.map((each) => each.id).join(', ')}; found ${reagentId}`
		);
	return reagent;
}

/**
 * With some doses of a reagent. One that makes the pH holds no dye.
 *
 * @throws RangeError naming `reagentId` when the kit has none of that id
 */
export function withDoses(
	kit: Kit,
	contents: VialContents,
	reagentId: string,
	doses: number,
	{ indicatorFactor, reagents }: Bottles
): VialContents {
	const reagent = reagentOf(kit, reagentId);
	const kind = kindOf(kit);
	const volumeMl = doseMl(reagent) * doses;
	const forPh = kit.contents?.phReagents?.[reagentId];
	if (forPh) {
		const asItIs = really[forPh.kind] as (each: Reagent, truth: ReagentTruth) => Reagent;
		return kind.addReagent(contents, asItIs({ ...forPh, volumeMl }, reagents));
	}
	const dyes = kit.contents?.dyes[reagentId] ?? [];
	return kind.addIndicator(contents, {
		volumeMl,
		dyes: dyes.map((dye) => ({ ...dye, molPerL: dye.molPerL * indicatorFactor }))
	});
}
