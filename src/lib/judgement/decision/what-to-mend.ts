import { faults } from '../catalogue/catalogue';
import { faultClasses, type Fault, type FaultClass } from '../catalogue/fault';
import type { Diagnosis } from '../diagnosis/diagnosis';
import type { Grounds } from './decide-because';
import { chanceInWords, setValue } from './decide-words';
import { convertValue } from '../../kits';

/** From here on what is wrong is likely enough to be mended, whatever is done about the water; judgement. */
const LIKELY = 0.5;
/** One that today's number may hide is told earlier: nothing else will show it before it misleads. Judgement. */
const HIDDEN = 0.3;

/** From here on one that is likelier than that nothing is wrong is told with its remedy; judgement. */
const LEADS = 0.25;

/** What a keeper can mend: what lies in the sample, the water or another method is another matter. */
const ownClasses: readonly FaultClass[] = faultClasses.filter((each) =>
	['technique', 'reagent', 'ware', 'method'].includes(each)
);

/** Where the thing to mend is. */
const placeOf: Partial<Record<FaultClass, string>> = {
	reagent: 'a bottle of the kit',
	ware: 'what measures the volumes'
};

/** Reads full scale less the value: in the middle of the scale that looks right. */
const isMirrored = ({ sizes }: Fault): boolean => sizes.some(({ of }) => of === 'fullScaleLess');

/** Without whether it was once or is a habit: either way the remedy is the same. */
const nameOf = ({ name }: Fault): string => name.replace(/, (this once|as a habit)$/u, '');

/** One that is less likely adds nothing worth naming to what shares its remedy. */
const NAMED_FROM = 0.01;

/** The likeliest thing to mend: a fault, and how likely it or one with the same remedy is there. */
type ToMend = { fault: Fault; chance: number; names: readonly string[] };

function likeliest(diagnosis: Diagnosis): ToMend | null {
	const byRemedy = new Map<string, ToMend>();
	for (const fault of faults) {
		const own = diagnosis.faults[fault.id] ?? 0;
		if (!ownClasses.includes(fault.class) || own === 0) continue;
		const before = byRemedy.get(fault.remedy);
		const isLikelier = own > (before ? (diagnosis.faults[before.fault.id] ?? 0) : 0);
		byRemedy.set(fault.remedy, {
			fault: before && !isLikelier ? before.fault : fault,
			chance: Math.min(1, (before?.chance ?? 0) + own),
			names: [...(before?.names ?? []), ...(own >= NAMED_FROM ? [fault.name] : [])]
		});
	}
	return [...byRemedy.values()].reduce<ToMend | null>(
		(best, each) => (best && best.chance >= each.chance ? best : each),
		null
	);
}

/**
 * Of what a chance is: of all accounts in which it is there, or what has the same remedy. Accounts are told
 * one by one elsewhere, with less.
 */
function shareWords({ fault, names }: ToMend): string {
	const own = names.filter((name) => name.startsWith(nameOf(fault)));
	const ways = [
		own.length > 1 ? 'once or each time' : '',
		own.length < names.length ? 'or something with the same remedy' : '',
		'alone or beside something else'
	];
	return `‘${nameOf(fault)}’, ${ways.filter(Boolean).join(', ')}`;
}

/** What a scale read the wrong way round would say of a tank at the top of the band; null where it cannot be told. */
function nextReading({ diagnosis, band, analyte }: Grounds, { id }: Fault): string | null {
	const meanOf = (faultIds: readonly string[]) =>
		diagnosis.explanations.find(
			({ faults: own }) =>
				own.length === faultIds.length && own.every((each, i) => each === faultIds[i])
		)?.trueValue.mean;
	const asRead = meanOf([]);
	const ifSo = meanOf([id]);
	if (asRead === undefined || ifSo === undefined) return null;
	const fullScale = convertValue(asRead + ifSo, diagnosis.unit, band.unit, analyte);
	const read = fullScale - band.high;
	return read > 0
		? `read like this, a tank at ${setValue(band.high, band.unit, analyte)} would read about ${setValue(read, band.unit, analyte)}`
		: null;
}

/** Whether it is likelier than that nothing is wrong, and than all that is nobody's to mend. */
function leads(
	{ nothingWrong, faults: chances }: Diagnosis,
	{ chance }: { chance: number }
): boolean {
	const ownIds = new Set(
		faults.filter((each) => ownClasses.includes(each.class)).map(({ id }) => id)
	);
	return (
		Object.entries(chances).every(([id, each]) => ownIds.has(id) || each < chance) &&
		nothingWrong < chance
	);
}

/** What is likely enough to be mended whatever is done about the water; nothing where none is. */
export function whatToMend(grounds: Grounds): string[] {
	const { diagnosis } = grounds;
	const found = likeliest(diagnosis);
	if (!found) return [];
	const { fault, chance } = found;
	const said = `${shareWords(found)}: the chances are ${chanceInWords(chance)}.`;
	const toMend = `What is to be mended is ${placeOf[fault.class] ?? 'the way of testing'}. ${said}`;
	if (isMirrored(fault) && chance >= HIDDEN) {
		const next = nextReading(grounds, fault);
		return [
			`${toMend} The number may be right today by luck, and far off another day${next ? `: ${next}` : ''}. ${fault.remedy}`
		];
	}
	if (chance >= LIKELY) return [`${toMend} ${fault.remedy}`];
	return chance >= LEADS && leads(diagnosis, found)
		? [`The likeliest of what may be wrong is ${said} ${fault.remedy}`]
		: [];
}
