import { decimalsFor, convertValue, usedMlOf, valueFromMark, type Kit } from '$lib/kits';
import { readingBudget } from '$lib/metrology';
import type { Evidence, Marks } from '$lib/observation';
import { plain } from '../../charts/numbers';
import { IN_QUESTION } from '../catalogue';
import { BlankReader, unitRemark, valueParts } from './blank-reader';
import type { Blanks, EvidenceForm, FormContext, Part, Told } from './form';
import { takenForAnother } from './looks-like';
import { unknownKitUncertainty } from './unknown-kit';

const markRange = { low: -1, high: 100, why: 'A numeral of a scale is between 0 and 100' };
const dropRange = { low: 1, high: 1000, why: 'Drops are between 1 and 1000' };

/** The mark at the end, where it was written down: the numeral of the seal or level, or the drops. */
function marksOf(reader: BlankReader, kit: Kit | null): Marks | undefined {
	if (!kit || reader.text('mark') === '') return undefined;
	const { by } = kit.delivery;
	if (by === 'dropper') return { drops: reader.number('mark', 'how many drops', dropRange) };
	const mark = reader.number('mark', 'the numeral', markRange);
	return by === 'burette' ? { levelMl: mark } : { sealMl: mark };
}

/** What the leaflet makes of the mark, in the kit's unit; null where it makes nothing. */
function valued(kit: Kit, { sealMl, levelMl, drops }: Marks) {
	try {
		const end = drops === undefined ? { markMl: sealMl ?? levelMl } : { drops };
		return { ...valueFromMark(kit, end), usedMl: usedMlOf(kit, end) };
	} catch (error) {
		if (error instanceof RangeError) return null;
		throw error;
	}
}

/** What careful hands get with this kit at a value: its ± and how far repeats fall apart, in the kit's unit. */
function careful(kit: Kit, value: number) {
	const { delivery } = kit;
	const middle = delivery.by === 'dropper' ? { drops: 10 } : { markMl: delivery.capacityMl / 2 };
	const { valuePerMl } = valueFromMark(kit, middle);
	return readingBudget(kit, { value, valuePerMl });
}

type Typed = { value: number; marks?: Marks; expanded: number; repeatabilitySd?: number };

/** The kit that the number came off; none where another value was taken off what it measures. */
const kitOf = ({ kit, analyte }: FormContext): Kit | null =>
	kit?.analyte === analyte ? kit : null;

/** Value and what goes with it, in the unit of the sentence. */
function typed(reader: BlankReader, context: FormContext): Typed {
	const { analyte } = context;
	const kit = kitOf(context);
	const { unit } = reader;
	const marks = marksOf(reader, kit);
	const byMark = kit && marks && reader.text('value') === '' ? valued(kit, marks) : null;
	if (kit && marks && reader.text('value') === '' && !byMark && reader.isSound)
		reader.problems.mark = 'The leaflet makes no value of that mark. Is it another line?';
	const value =
		kit && byMark
			? convertValue(byMark.value, kit.unit, unit, analyte)
			: reader.isSound
				? reader.value('value', 'the value')
				: Number.NaN;
	if (!kit || !Number.isFinite(value))
		return { value, expanded: unknownKitUncertainty(value, unit, analyte), marks };
	const inKit = careful(kit, Math.max(1e-6, convertValue(value, unit, kit.unit, analyte)));
	const own = (size: number) => convertValue(size, kit.unit, unit, analyte);
	return {
		value,
		marks,
		expanded: own(inKit.expandedUncertainty),
		repeatabilitySd: own(inKit.repeatabilitySd)
	};
}

/** What an empty ± is taken for, once there is a value. */
function takenOf(blanks: Blanks, context: FormContext): number | null {
	const { value, expanded } = typed(new BlankReader(blanks, context), context);
	return value >= 0 ? expanded : null;
}

const markWords = (kit: Kit): { before: string; label: string; after: string } =>
	kit.delivery.by === 'dropper'
		? { before: 'It took', label: 'Drops that it took', after: ' drops.' }
		: kit.delivery.by === 'burette'
			? { before: 'The level stood at', label: 'Where the level stood', after: '.' }
			: { before: 'The seal stood at', label: 'Where the seal stood', after: '.' };

/** The reading in question, typed in. */
export const inQuestion: EvidenceForm = {
	title: IN_QUESTION,
	aside:
		'± says how far off it may be: about 19 times in 20 the truth lies no further away. Left empty, it is taken as usual for such a kit.',
	parts: (blanks, context): Part[] => {
		const kit = kitOf(context);
		const mark = kit && markWords(kit);
		return [
			'The test said',
			...valueParts(blanks, context, {
				value: 'What the test said',
				...(mark ? { after: '.' } : {}),
				taken: takenOf(blanks, context)
			}),
			...(mark
				? [
						mark.before,
						{
							blank: 'mark',
							label: `${mark.label}; may stay empty`,
							after: mark.after,
							taken: 'may stay empty',
							width: 12
						}
					]
				: [])
		];
	},
	doubts: takenForAnother,
	remark: (blanks, context) => {
		const doubt = unitRemark(blanks, context);
		if (doubt) return doubt;
		const { analyte } = context;
		const kit = kitOf(context);
		const reader = new BlankReader(blanks, context);
		const marks = marksOf(reader, kit);
		const byMark = kit && marks && reader.isSound ? valued(kit, marks) : null;
		if (kit && marks && reader.isSound && !byMark)
			return 'The leaflet makes no value of that mark. Is it another line?';
		if (!kit || !byMark) return null;
		const { unit } = reader;
		const made = convertValue(byMark.value, kit.unit, unit, analyte);
		return `By the leaflet that mark makes ${plain(made, decimalsFor(unit, undefined, analyte))}.`;
	},
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const { value, marks, expanded, repeatabilitySd } = typed(reader, context);
		const evidence: Evidence = {
			kind: 'test',
			from: 'first',
			reading: {
				id: context.id,
				label: IN_QUESTION,
				value,
				...(reader.text('u') === ''
					? { expandedUncertainty: expanded, isUncertaintyTaken: true }
					: { expandedUncertainty: reader.uncertainty() }),
				unit: reader.unit,
				...(repeatabilitySd === undefined ? {} : { repeatabilitySd }),
				...(marks ? { marks } : {})
			}
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};
