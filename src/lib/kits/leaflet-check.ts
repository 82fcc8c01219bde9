import type { Analyte, Kit } from './kit';
import { impliedTitrantStrength, worthOf, type Worth } from './leaflet-figures';
import type { LeafletRemark } from './leaflet-remark';
import { tableRemarks } from './table-remarks';
import { numberText } from './typed-number';
import { plausibleRange, unitOf } from './units';

export type LeafletCheck = {
	/** Titrant strength that the conversion implies, mol per litre. */
	strengthMolPerL: number;
	worth: Worth[];
	remarks: LeafletRemark[];
};

/**
 * Strengths of titrant within which kits for small samples lie, mol/L; this project's choice: below,
 * one filling would not reach an ordinary tank; above, a drop would jump over it.
 */
const usualTitrant: Record<Analyte, { lowMolPerL: number; highMolPerL: number; what: string }> = {
	alkalinity: { lowMolPerL: 0.005, highMolPerL: 0.2, what: 'acid' },
	calcium: { lowMolPerL: 0.005, highMolPerL: 0.3, what: 'EDTA' },
	hardness: { lowMolPerL: 0.005, highMolPerL: 1, what: 'EDTA' },
	magnesium: { lowMolPerL: 0.005, highMolPerL: 1, what: 'titrant' }
};

const short = (value: number) => numberText(Number(value.toPrecision(2)));

function strengthRemark(kit: Kit, strengthMolPerL: number): LeafletRemark[] {
	const { lowMolPerL, highMolPerL, what } = usualTitrant[kit.analyte];
	if (strengthMolPerL >= lowMolPerL && strengthMolPerL <= highMolPerL) return [];
	return [
		{
			id: 'strength',
			about: 'conversion',
			tone: 'warn',
			text: `This implies ${what} of ${short(strengthMolPerL)} mol/L, which is unusual (${lowMolPerL} to ${highMolPerL}): check sample, capacity, unit and values.`
		}
	];
}

/** How far one filling goes, where that is less than a tank may need. */
function reachRemarks(kit: Kit, worth: readonly Worth[]): LeafletRemark[] {
	const { name, decimals } = unitOf(kit.unit, kit.analyte);
	const plausible = plausibleRange(kit.unit, kit.analyte);
	return worth.flatMap(({ name: volume, fillingValue }, i): LeafletRemark[] => {
		if (fillingValue === null || fillingValue >= plausible.high) return [];
		const isShort = i === 0 && fillingValue < plausible.low;
		const where = worth.length > 1 ? `${volume}: one` : 'One';
		return [
			{
				id: 'reach',
				about: 'delivery',
				tone: isShort ? 'warn' : 'say',
				text: `${where} filling shows ${fillingValue.toFixed(decimals)} ${name} at most; ${isShort ? 'hardly any tank is so low, so check the blanks' : 'above that it is filled again on the way'}.`
			}
		];
	});
}

/** By drops out of a syringe or burette, a leaflet rests on a drop that it does not measure. */
function dropsRemark({ delivery, conversion }: Kit): LeafletRemark[] {
	const byDrops =
		conversion.kind === 'perDrop' || (conversion.kind === 'rows' && conversion.column === 'drops');
	if (!byDrops || delivery.by === 'dropper') return [];
	return [
		{
			id: 'dropsDecide',
			about: 'conversion',
			tone: 'say',
			text: `The leaflet counts drops but you read mL: the value rests on a drop of ${delivery.dropMl} mL. Count the drops of a full ${delivery.by} once.`
		}
	];
}

/** A claim that is finer than what the hands can add at once. */
function accuracyRemark(kit: Kit, worth: readonly Worth[]): LeafletRemark[] {
	const claimed = kit.statedAccuracy;
	if (claimed === undefined) return [];
	const { name } = unitOf(kit.unit, kit.analyte);
	const coarse = worth.filter(({ dropValue }) => claimed < dropValue);
	const [first] = coarse;
	if (!first) return [];
	const except =
		coarse.length < worth.length ? ' With the larger sample a drop is worth less than that.' : '';
	return [
		{
			id: 'accuracy',
			about: 'accuracy',
			tone: 'warn',
			text: `±${short(claimed)} ${name} is finer than one drop, ${short(first.dropValue)}: a single test in whole drops cannot be sure of it.${except}`
		}
	];
}

/**
 * What a leaflet implies, and what in it is odd: the strength of its titrant, what a drop, a
 * graduation and a filling are worth, rows of its table that do not fit the others, a claim that is
 * finer than a drop.
 */
export function checkLeaflet(kit: Kit): LeafletCheck {
	const strengthMolPerL = impliedTitrantStrength(kit);
	const worth = worthOf(kit);
	return {
		strengthMolPerL,
		worth,
		remarks: [
			...tableRemarks(kit),
			...dropsRemark(kit),
			...strengthRemark(kit, strengthMolPerL),
			...reachRemarks(kit, worth),
			...accuracyRemark(kit, worth)
		]
	};
}
