import { decimalsFor, type Analyte, type Kit } from '$lib/kits';
import {
	CircumstancesSchema,
	KnownSolutionSchema,
	type Circumstances,
	type KnownSolution
} from '$lib/observation';

/**
 * The part of an address that says which water a test begun there is of: a known solution.
 *
 * @param kitId of the kit that it is begun with; without one the start asks
 */
export function knownSolutionHash(
	solution?: KnownSolution,
	analyte?: Analyte,
	kitId?: string
): string {
	const said = new URLSearchParams({ water: 'reference' });
	if (kitId !== undefined) said.set('kit', kitId);
	if (solution && analyte) {
		const { nominal, expandedUncertainty, unit, matrix, name } = solution;
		said.set('analyte', analyte);
		// The start of the test shows what is written here, so that it is no finer than its ±.
		const decimals = decimalsFor(unit, expandedUncertainty, analyte);
		said.set('nominal', String(Number(nominal.toFixed(decimals))));
		said.set('band', String(Number(expandedUncertainty.toFixed(decimals))));
		said.set('unit', unit);
		said.set('matrix', matrix);
		if (name) said.set('name', name);
	}
	return `#${said}`;
}

/** The kit that an address names after '#', if it names one. */
export const kitInHash = (hash: string): string | null =>
	new URLSearchParams(hash.replace(/^#/, '')).get('kit');

/**
 * What an address says of the water of a test that is begun there; null where it says nothing. Of a
 * solution that is not of the kit's analyte, or not all there, no more is said than that it is one.
 */
export function waterInHash(hash: string, { analyte }: Pick<Kit, 'analyte'>): Circumstances | null {
	const asked = new URLSearchParams(hash.replace(/^#/, ''));
	const water = CircumstancesSchema.shape.water.safeParse(asked.get('water') ?? undefined);
	if (!water.success || water.data === undefined) return null;
	const name = asked.get('name');
	const solution = KnownSolutionSchema.safeParse({
		nominal: Number(asked.get('nominal') ?? Number.NaN),
		expandedUncertainty: Number(asked.get('band') ?? Number.NaN),
		unit: asked.get('unit'),
		matrix: asked.get('matrix'),
		...(name ? { name } : {})
	});
	const isOfKit = water.data === 'reference' && asked.get('analyte') === analyte;
	return {
		water: water.data,
		...(isOfKit && solution.success ? { reference: solution.data } : {})
	};
}
