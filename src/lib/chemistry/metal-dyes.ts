import { metalDyes, type MetalDye } from './metal-dye-records';

export type { MetalDye };

const byId = new Map(metalDyes.map((dye) => [dye.id, dye]));

/** Ids of every metal indicator that is known. */
export const metalDyeIds: readonly string[] = metalDyes.map((dye) => dye.id);

/**
 * The record of a metal indicator.
 *
 * @throws RangeError naming `dyeId` when there is none of that id
 */
export function metalDyeOf(dyeId: string): MetalDye {
	const dye = byId.get(dyeId);
	if (!dye) throw new RangeError(`dyeId must be one of ${metalDyeIds.join(', ')}; found ${dyeId}`);
	return dye;
}

/** 1/α of In3− at hydrogen ion `h`: by how much protons lower the constants of a dye. */
export function dyeSideReactions(h: number, dye: MetalDye): number {
	const [first, second] = dye.pKa;
	return 1 + h * 10 ** second * (1 + h * 10 ** first);
}

/** log K′ of a metal with a dye at a pH; where pM is this, half of the dye holds the metal. */
export function conditionalDyeLogK(
	dyeId: string,
	metal: 'calcium' | 'magnesium',
	ph: number
): number {
	const dye = metalDyeOf(dyeId);
	const logK = metal === 'calcium' ? dye.logKCalcium : dye.logKMagnesium;
	return logK - Math.log10(dyeSideReactions(10 ** -ph, dye));
}
