import { analyteName, titrantOf } from '$lib/kits';
import { methodFiguresFor, usualMethodFiguresOf } from '$lib/metrology';
import type { Evidence, EvidenceOf } from '$lib/observation';
import type { TestRole } from '$lib/procedure';
import { BlankReader, unitRemark, valueParts } from './blank-reader';
import { doubtsOfValue, takenOffFor } from './looks-like';
import type { Blanks, EvidenceForm, FormContext, Part, Told } from './form';

/** Volume of a larger or smaller sample over that of the test in question. */
const ratios = [
	{ value: '2', words: 'twice' },
	{ value: '0.5', words: 'half' }
] as const;

type Differs = NonNullable<EvidenceOf<'test'>['differs']>;
type TestSentence = {
	title: string;
	aside?: string;
	suits?: (context: FormContext) => boolean;
	begin?: (context: FormContext) => Blanks;
	from: (blanks: Blanks) => TestRole;
	/** What it differs in, no stored test says: it has to be typed. */
	isTyped?: boolean;
	label: (reader: BlankReader, blanks: Blanks) => string;
	before: (blanks: Blanks, context: FormContext) => readonly Part[];
	/** What the number is, for those who do not see the sentence around it. */
	value?: (blanks: Blanks, context: FormContext) => string;
	differs?: (reader: BlankReader, blanks: Blanks) => Differs | undefined;
};

/** A test of the tank's water by the kit in question, in whatever it differed. */
function testForm({
	title,
	aside,
	suits,
	begin,
	from,
	isTyped = false,
	label,
	before,
	value = () => 'What it read',
	differs
}: TestSentence): EvidenceForm {
	return {
		title,
		...(aside === undefined ? {} : { aside }),
		...(suits ? { suits } : {}),
		...(begin ? { begin } : {}),
		...(isTyped ? {} : { logRole: (blanks) => from(blanks) }),
		parts: (blanks, context) => [
			...before(blanks, context),
			...valueParts(blanks, context, { value: value(blanks, context) })
		],
		remark: unitRemark,
		doubts: doubtsOfValue,
		read: (blanks, context): Told => {
			const reader = new BlankReader(blanks, context);
			const reading = reader.ownReading(label(reader, blanks));
			const otherwise = differs?.(reader, blanks);
			const evidence: Evidence = {
				kind: 'test',
				reading,
				from: from(blanks),
				...(otherwise ? { differs: otherwise } : {})
			};
			return reader.isSound ? { evidence } : { problems: reader.problems };
		}
	};
}

export const repeat = testForm({
	title: 'A repeat',
	aside: 'The same water, hands, ware and bottles.',
	from: () => 'repeatFull',
	label: () => 'Repeat',
	before: () => ['Tested once more, the same water read']
});

export const freshLot = testForm({
	title: 'Another bottle of titrant',
	aside: 'The same water, tested with titrant of another lot.',
	from: () => 'freshLot',
	label: (reader) => `Bottle ${reader.words('lot', 'of another lot')}`,
	before: () => [
		'With the bottle',
		{ blank: 'lot', label: 'Lot of the other bottle', kind: 'words', width: 8, taken: 'lot' },
		'the same water read'
	],
	differs: (reader) => (reader.text('lot') ? { lot: reader.text('lot') } : undefined)
});

/** What it is called where nobody says: the same other one each time. */
const ANOTHER = 'another';

export const otherVial = testForm({
	title: 'Another vial or sample syringe',
	aside: 'The same water, hands and bottles; the sample measured and tested in other glass.',
	from: () => 'repeatFull',
	isTyped: true,
	label: (reader) => `In ${reader.words('vial', 'another vial')}`,
	before: () => [
		'In',
		{
			blank: 'vial',
			label: 'Which vial or syringe',
			kind: 'words',
			width: 12,
			taken: 'another vial'
		},
		'the same water read'
	],
	differs: (reader) => ({ sampleWare: reader.text('vial') || ANOTHER })
});

export const freshSample = testForm({
	title: 'Water taken anew',
	aside: 'An hour or more after dosing, away from the outlet.',
	from: () => 'freshSample',
	label: (reader) =>
		reader.text('where') ? `Fresh water, ${reader.text('where')}` : 'Fresh water',
	before: () => [
		'Fresh water, taken',
		{
			blank: 'where',
			label: 'Where or when',
			kind: 'words',
			width: 12,
			taken: 'where, when',
			after: ','
		},
		'read'
	]
});

export const otherHands = testForm({
	title: 'Somebody else’s test',
	aside: 'The same water and kit in other hands, without your number in sight.',
	from: () => 'otherHands',
	label: (reader) => capitalName(reader.words('who', 'Somebody else')),
	before: () => [
		{ blank: 'who', label: 'Who tested', kind: 'words', width: 10, taken: 'somebody' },
		'tested the same water with my kit and read'
	],
	differs: (reader) => (reader.text('who') ? { hands: reader.text('who') } : undefined)
});
const capitalName = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

const isHalf = (blanks: Blanks) => blanks.ratio === '0.5';

/** Ways of doing it otherwise that leave some cause no room. */
const ways = [
	{ value: 'moreBase', words: 'more base' },
	{ value: 'thinnedSample', words: 'purified water beside the sample' },
	{ value: 'warmSlow', words: 'a warm sample and slow drops' },
	{ value: 'takenOffAnew', words: 'calcium measured anew' }
] as const;
/** Those that a method has room for: base for one with base, a value measured anew where one is taken off. */
function waysFor({ analyte, kit }: FormContext) {
	const { reagents, wholeOverValue } = kit
		? methodFiguresFor(kit, analyte)
		: usualMethodFiguresOf(analyte);
	const hasNone = {
		moreBase: !reagents?.includes('base'),
		takenOffAnew: wholeOverValue === undefined,
		thinnedSample: false,
		warmSlow: false
	};
	return ways.filter(({ value }) => !hasNone[value]);
}
const wayOf = ({ way }: Blanks) => ways.find(({ value }) => value === way) ?? ways[0];
/** The number is then not what was measured, but what is left. */
const isWorkedOutAnew = (blanks: Blanks, { analyte }: FormContext) =>
	wayOf(blanks).value === 'takenOffAnew' && takenOffFor(analyte) !== undefined;

export const otherWay = testForm({
	title: 'A test of metals done otherwise',
	aside: 'For calcium and magnesium: the same water and kit, in one thing done otherwise.',
	suits: ({ analyte }) => titrantOf[analyte].kind === 'edta',
	begin: (context) => ({ way: waysFor(context)[0]?.value ?? '' }),
	from: (blanks) => wayOf(blanks).value,
	label: (_, blanks) => `With ${wayOf(blanks).words}`,
	before: (blanks, context) => [
		'With',
		{ choice: 'way', label: 'What was done otherwise', options: waysFor(context) },
		isWorkedOutAnew(blanks, context)
			? `${analyteName(context.analyte)}, worked out anew, comes to`
			: 'the same water read'
	],
	value: (blanks, context) =>
		isWorkedOutAnew(blanks, context)
			? `${analyteName(context.analyte, 'start')} once the new value is taken off`
			: 'What it read'
});

export const otherSample = testForm({
	title: 'Twice or half the water',
	aside:
		'Write the value as reckoned for that much water: with twice the sample, half of what the leaflet’s table says.',
	from: (blanks) => (isHalf(blanks) ? 'smallerSample' : 'largerSample'),
	label: (_, blanks) => (isHalf(blanks) ? 'Half the water' : 'Twice the water'),
	before: () => [
		'With',
		{ choice: 'ratio', label: 'How much water', options: ratios },
		'the water the test comes to'
	],
	differs: (_, blanks) => ({ sampleRatio: isHalf(blanks) ? 0.5 : 2 })
});
