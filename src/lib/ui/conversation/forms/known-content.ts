import { plausibleRange } from '$lib/kits';
import type { Evidence } from '$lib/observation';
import { BlankReader, unitRemark, valueParts } from './blank-reader';
import { plain } from '../../charts/numbers';
import type { EvidenceForm, FormContext, Told } from './form';
import { isTooLoose, tooLoose } from './too-loose';
import { instrumentsIn } from './second-method';

const matrices = [
	{ value: 'seawater', words: 'in seawater or sea salt' },
	{ value: 'purified', words: 'in purified water' },
	{ value: 'sodiumChloride', words: 'in table salt and purified water' }
] as const;
const matrixIds = ['seawater', 'purified', 'sodiumChloride'] as const;
const OWN = 'own';
/** Where nobody says how sure a content is: a share of it. Our own choice. */
const UNSURE_CONTENT = 0.05;

/** Who read a known solution: the kit in question, or one of the second methods. */
function readers(context: FormContext) {
	const others = instrumentsIn(context.evidence);
	return [
		{ value: OWN, words: 'My kit' },
		...(others.length > 0 ? others : ['Second method']).map((name) => ({
			value: name,
			words: name
		}))
	];
}

/** A solution of known content, tested by the kit in question or by a second method. */
export const reference: EvidenceForm = {
	title: 'A known solution',
	aside:
		'Write what the kit read, as it read it: that purified water reads a little lower is reckoned with.',
	begin: () => ({ matrix: 'purified', reader: OWN }),
	logRole: () => 'reference',
	logTakes: ({ holds }) => holds !== undefined,
	parts: (blanks, context) => [
		'A solution called',
		{ blank: 'solution', label: 'Name of the solution', kind: 'words', width: 9, taken: 'a name' },
		'is said to hold',
		{ blank: 'nominal', label: 'What it is said to hold' },
		'±',
		{
			blank: 'nominalU',
			label: 'The ± of what it holds; left empty it is taken as a twentieth of it',
			taken: '5 %',
			after: ` ${new BlankReader(blanks, context).unitName},`
		},
		'made',
		{ choice: 'matrix', label: 'What it is made in', options: matrices, after: '.' },
		{ choice: 'reader', label: 'Who read it', options: readers(context) },
		'read',
		...valueParts(blanks, context, { value: 'What it read' })
	],
	remark: (blanks, context) => unitRemark(blanks, context, { isTank: false }),
	doubts: (blanks, context) =>
		tooLoose(blanks, context, { amount: 'nominal', plusMinus: 'nominalU', it: 'the solution' }),
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const by = reader.words('reader', OWN);
		const solution = reader.text('solution');
		const label = solution || 'Known solution';
		const nominal = reader.content('nominal', 'what it is said to hold');
		const evidence: Evidence = {
			kind: 'reference',
			reading: by === OWN ? reader.ownReading(label) : reader.reading(`${label}, by ${by}`),
			nominal,
			...(reader.text('nominalU') === ''
				? { nominalExpandedUncertainty: nominal * UNSURE_CONTENT, isNominalUncertaintyTaken: true }
				: { nominalExpandedUncertainty: reader.content('nominalU', 'the ± of what it holds') }),
			matrix: reader.oneOf('matrix', matrixIds, 'purified'),
			...(solution ? { solution } : {}),
			...(by === OWN ? {} : { instrument: by })
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};

/** Water that holds nothing. */
export const blank: EvidenceForm = {
	title: 'Water that holds nothing',
	begin: () => ({ matrix: 'purified' }),
	parts: (blanks, context) => [
		'Water that holds nothing,',
		{
			choice: 'matrix',
			label: 'What water',
			options: matrices.slice(1).map(({ value, words }) => ({
				value,
				words: value === 'purified' ? 'purified' : words
			})),
			after: ','
		},
		'read',
		...valueParts(blanks, context, { value: 'What it read' })
	],
	remark: (blanks, context) => {
		const reader = new BlankReader(blanks, context);
		if (reader.text('value') === '') return null;
		const value = reader.value('value', 'the value');
		const isAsTank = value >= plausibleRange(reader.unit, context.analyte).low;
		return isAsTank
			? `${plain(value)} ${reader.unitName} is what a tank may hold. Was it water that holds nothing?`
			: null;
	},
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const evidence: Evidence = {
			kind: 'blank',
			reading: reader.ownReading('Blank'),
			matrix: reader.oneOf('matrix', matrixIds, 'purified')
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};

const additionBlanks = { amount: 'added', plusMinus: 'addedU', it: 'the addition' };

/** The tank's water with a known amount added. */
export const addition: EvidenceForm = {
	title: 'A known amount added',
	parts: (blanks, context) => [
		'After an addition that raises the sample by',
		{ blank: 'added', label: 'By how much the addition raises it' },
		'±',
		{
			blank: 'addedU',
			label: 'The ± of that rise; left empty it is taken as a twentieth of it',
			taken: '5 %',
			after: ` ${new BlankReader(blanks, context).unitName},`
		},
		'the same water read',
		...valueParts(blanks, context, { value: 'What it read' })
	],
	remark: (blanks, context) => {
		const { first } = context;
		const reader = new BlankReader(blanks, context);
		if (!first || reader.unit !== first.unit || reader.text('value') === '') return null;
		const value = reader.value('value', 'the value');
		const added = reader.content('added', 'the rise');
		// Beside a rise that nobody knows, what was found again means nothing.
		if (!reader.isSound || isTooLoose(blanks, context, additionBlanks)) return null;
		return `Found again: ${plain(value - first.value)} of ${plain(added)} ${reader.unitName}.`;
	},
	doubts: (blanks, context) => tooLoose(blanks, context, additionBlanks),
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const added = reader.content('added', 'by how much the addition raises it');
		const evidence: Evidence = {
			kind: 'addition',
			reading: reader.ownReading('With a known amount added'),
			added,
			...(reader.text('addedU') === ''
				? { addedExpandedUncertainty: added * UNSURE_CONTENT, isAddedUncertaintyTaken: true }
				: { addedExpandedUncertainty: reader.content('addedU', 'the ± of that rise') })
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};
