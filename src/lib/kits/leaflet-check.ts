import type { Kit } from './kit';
import { impliedTitrantStrength, worthOf, type Worth } from './leaflet-figures';
import type { LeafletRemark } from './leaflet-remark';
import { tableRemarks } from './table-remarks';
import { titrantOf } from './titrant';
import { numberText } from './typed-number';
import { plausibleRange, unitOf } from './units';

export type LeafletCheck = {
	/** Titrant strength that the conversion implies, mol per litre. */
	strengthMolPerL: number;
	worth: Worth[];
	remarks: LeafletRemark[];
};

const short = (value: number) => numberText(Number(value.toPrecision(2)));

function strengthRemark(kit: Kit, strengthMolPerL: number): LeafletRemark[] {
	const { usual, name } = titrantOf[kit.analyte];
	const { lowMolPerL, highMolPerL } = usual;
	if (strengthMolPerL >= lowMolPerL && strengthMolPerL <= highMolPerL) return [];
	return [
		{
			id: 'strength',
			about: 'conversion',
			tone: 'warn',
			text: `This implies ${name} of ${short(strengthMolPerL)} mol/L, which is unusual (${lowMolPerL} to ${highMolPerL}): check sample, capacity, unit and values.`
		}
	];
}

/** How far one filling goes, where that is less than a tank may need. */
function reachRemarks(kit: Kit, worth: readonly Worth[]): LeafletRemark[] {
	const { name, decimals } = unitOf(kit.unit, kit.analyte);
	const plausible = plausibleRange(kit.unit, kit.analyte);
	const isRefilled = kit.delivery.by !== 'dropper' && kit.delivery.refilled === true;
	return worth.flatMap(({ name: volume, fillingValue }, i): LeafletRemark[] => {
		if (fillingValue === null || fillingValue >= plausible.high) return [];
		// Where the leaflet fills again, a filling that no tank stays within is as it should be.
		const isShort = i === 0 && fillingValue < plausible.low && !isRefilled;
		const where = worth.length > 1 ? `${volume}: one` : 'One';
		const most = Math.ceil(plausible.high / fillingValue);
		const beyond = isShort
			? 'hardly any tank is so low, so check the blanks'
			: isRefilled
				? `${fillingsWords(fillingValue, plausible)} are needed, and each mark is noted`
				: 'above that it is filled again on the way';
		return [
			{
				id: 'reach',
				about: 'delivery',
				tone: isShort || most > MOST_FILLINGS ? 'warn' : 'say',
				text: `${where} filling shows ${fillingValue.toFixed(decimals)} ${name} at most; ${beyond}.`
			}
		];
	});
}

/** More fillings than this in one test are hardly meant; this project's choice. */
const MOST_FILLINGS = 6;

/** Fillings that tanks take, from the lowest to the highest value that is plausible. */
function fillingsWords(filling: number, { low, high }: { low: number; high: number }): string {
	const [few, many] = [Math.ceil(low / filling), Math.ceil(high / filling)];
	return few === many ? `${few} fillings` : `${few} to ${many} fillings`;
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
