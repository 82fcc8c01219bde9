import type { Analyte } from '../../kits';
import { molarMasses } from '../catalogue/molar-masses';
import type { PlannedMeans } from './correction';

const {
	sodiumBicarbonate: NAHCO3,
	sodiumCarbonate: NA2CO3,
	water: WATER,
	calciumChloride: CACL2,
	magnesiumChloride: MGCL2,
	magnesiumSulfate: MGSO4
} = molarMasses;

/** A powder that is weighed, with the water that its crystals may hold. */
export type Powder = {
	analyte: Analyte;
	name: string;
	/** Of the analyte in one mol of powder, in moles or equivalents as its base unit counts. */
	perMol: number;
	/** Moles of inorganic carbon with each equivalent of alkalinity; null where it brings no alkalinity. */
	carbonPerEquivalent: number | null;
	/** Strength of what is in the jar, expanded uncertainty as a share; judgement. */
	strengthExpandedShare: number;
	/** By the water in its crystals: the formula, and g/mol. Those without a choice have one. */
	hydrates: Readonly<Record<string, { name: string; gPerMol: number }>>;
	cautions: readonly string[];
};

const DRAWS_WATER =
	'It draws water from the air: what clumps in the jar, or has run, is weaker than its label says.';
const GETS_HOT =
	'It grows hot as it dissolves: powder into cold purified water, a little at a time, never water onto the powder. Goggles.';

/** What can be weighed for a correction. A further powder is a further record. */
export const powders = {
	bicarbonate: {
		analyte: 'alkalinity',
		name: 'sodium bicarbonate, NaHCO₃',
		perMol: 1,
		carbonPerEquivalent: 1,
		strengthExpandedShare: 0.02,
		hydrates: { anhydrous: { name: '', gPerMol: NAHCO3 } },
		cautions: [
			'Dissolve it in cold purified water; heat makes carbonate of it. Pour it slowly where the water flows fast, away from animals.'
		]
	},
	carbonate: {
		analyte: 'alkalinity',
		name: 'sodium carbonate',
		perMol: 2,
		carbonPerEquivalent: 0.5,
		// It takes up water or gives it off in the jar.
		strengthExpandedShare: 0.05,
		hydrates: {
			anhydrous: { name: 'without water, Na₂CO₃', gPerMol: NA2CO3 },
			monohydrate: { name: 'monohydrate, Na₂CO₃·H₂O', gPerMol: NA2CO3 + WATER },
			decahydrate: { name: 'decahydrate, Na₂CO₃·10H₂O', gPerMol: NA2CO3 + 10 * WATER }
		},
		cautions: [
			'Dissolve it in much purified water and let it drip where the water flows fast: it lifts pH and may throw flakes.',
			'Be sure of the hydrate: crystals that have gone to powder have lost water and are stronger. Goggles: it is strong alkali.'
		]
	},
	calciumChloride: {
		analyte: 'calcium',
		name: 'calcium chloride',
		perMol: 1,
		carbonPerEquivalent: null,
		strengthExpandedShare: 0.1,
		hydrates: {
			anhydrous: { name: 'without water, CaCl₂', gPerMol: CACL2 },
			dihydrate: { name: 'dihydrate, CaCl₂·2H₂O', gPerMol: CACL2 + 2 * WATER },
			hexahydrate: { name: 'hexahydrate, CaCl₂·6H₂O', gPerMol: CACL2 + 6 * WATER }
		},
		cautions: [
			GETS_HOT,
			DRAWS_WATER,
			'It adds chloride and no alkalinity: where corals build, alkalinity has to follow by its own addition.'
		]
	},
	magnesiumChloride: {
		analyte: 'magnesium',
		name: 'magnesium chloride',
		perMol: 1,
		carbonPerEquivalent: null,
		strengthExpandedShare: 0.05,
		hydrates: {
			anhydrous: { name: 'without water, MgCl₂', gPerMol: MGCL2 },
			hexahydrate: { name: 'hexahydrate, MgCl₂·6H₂O', gPerMol: MGCL2 + 6 * WATER }
		},
		cautions: [
			'Dissolve it in cold purified water; without water in its crystals it grows hot. Goggles.',
			DRAWS_WATER
		]
	},
	magnesiumSulfate: {
		analyte: 'magnesium',
		name: 'magnesium sulfate',
		perMol: 1,
		carbonPerEquivalent: null,
		strengthExpandedShare: 0.03,
		hydrates: {
			anhydrous: { name: 'without water, MgSO₄', gPerMol: MGSO4 },
			heptahydrate: { name: 'heptahydrate, MgSO₄·7H₂O', gPerMol: MGSO4 + 7 * WATER }
		},
		cautions: [
			'Dissolve it in cold purified water. It is for aquaria or of a known purity: bath salts hold scent and colour.',
			'It brings sulfate for each magnesium: for a large rise most of it is magnesium chloride, as in the sea.'
		]
	}
} as const satisfies Record<string, Powder>;
export type PowderId = keyof typeof powders;
type PowderMeans = Extract<PlannedMeans, { by: PowderId }>;

export const isPowder = (means: PlannedMeans): means is PowderMeans => means.by in powders;
export const powderOf = ({ by }: PowderMeans): Powder => powders[by];
const hydrateOf = (means: PowderMeans) =>
	powderOf(means).hydrates['hydrate' in means ? means.hydrate : 'anhydrous']!;

/** Molar mass of a powder with the water of its crystals, g/mol. */
export const molarMassOf = (means: PowderMeans): number => hydrateOf(means).gPerMol;

/** Grams of a powder, as pure as it is, that hold a thousandth of the analyte's base unit: 1 meq or 1 mmol. */
export const gramsPerThousandth = (means: PowderMeans): number =>
	molarMassOf(means) / (1000 * powderOf(means).perMol) / means.purity;

/** Names of the hydrates of a means, by id, where there is a choice that must be made; empty elsewhere. */
export function hydratesOf(by: PlannedMeans['by'] | ''): Record<string, string> {
	const known: Readonly<Record<string, Powder>> = powders;
	const hydrates = Object.entries(known[by]?.hydrates ?? {});
	return hydrates.length > 1
		? Object.fromEntries(hydrates.map(([id, { name }]) => [id, name]))
		: {};
}

const percent = (share: number) => `${Number((share * 100).toPrecision(3))} %`;

/** In words, with hydrate and purity. */
export function powderInWords(means: PowderMeans): string {
	const hydrate = hydrateOf(means).name;
	return `${powderOf(means).name}${hydrate ? `, ${hydrate}` : ''}, ${percent(means.purity)} pure`;
}
