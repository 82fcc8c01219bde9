import {
	analytesGiving,
	analyteName,
	convertValue,
	decimalsFor,
	differenceOfAnalyte,
	unitName,
	type Analyte,
	type Unit
} from '$lib/kits';
import { usualTakenOff } from '$lib/metrology';
import { isValued, type Evidence, type EvidenceOf, type Reading } from '$lib/observation';
import { plain } from '../charts/numbers';
import { IN_QUESTION, type Catalogue } from './catalogue';

/** A piece of evidence as a line of the list. */
export type EvidenceLine = {
	title: string;
	/** '7.4 ± 0.4 dKH', or what was answered. */
	figure: string;
	/** What else was said of it; empty where nothing was. */
	detail: string;
};

const matrixWords = {
	seawater: 'in seawater',
	purified: 'in purified water',
	sodiumChloride: 'in table salt and purified water'
} as const;

/** As it was given, in its own unit; in the unit of the page beside it where that is another. */
function figureOf(
	{ value, expandedUncertainty, unit }: Reading,
	shown: Unit,
	analyte: Analyte
): string {
	const decimals = decimalsFor(unit, expandedUncertainty, analyte);
	const own = `${plain(value, decimals)} ± ${plain(expandedUncertainty, decimals)} ${unitName(unit, analyte)}`;
	if (unit === shown) return own;
	const there = convertValue(value, unit, shown, analyte);
	const expanded = convertValue(expandedUncertainty, unit, shown, analyte);
	return `${own}, that is ${plain(there, decimalsFor(shown, expanded, analyte))} ${unitName(shown, analyte)}`;
}

/** A ± that nobody gave is called so, with what it was taken from; empty where it was given. */
export function takenWords(evidence: Evidence, analyte: Analyte): string {
	if (!isValued(evidence) || !evidence.reading.isUncertaintyTaken) return '';
	const { unit, expandedUncertainty } = evidence.reading;
	if (evidence.kind !== 'test' || evidence.from !== 'first')
		return '± taken as that of the reading in question';
	const size = plain(expandedUncertainty, decimalsFor(unit, expandedUncertainty, analyte));
	return `± taken as ${size}: usual for such a kit`;
}

/** What was taken off the reading in question to find it, and with what is reckoned where nobody said; empty where nothing is. */
export function takenOffWords(evidence: Evidence, analyte: Analyte): string {
	if (evidence.kind !== 'test' || evidence.from !== 'first') return '';
	const whole = analytesGiving(analyte).find((each) => each !== analyte);
	const less = whole && differenceOfAnalyte[whole]?.less;
	if (!less) return '';
	const { value, expandedUncertainty, unit } = evidence.reading.takenOff ?? usualTakenOff;
	const decimals = decimalsFor(unit, expandedUncertainty, less);
	const size = `${plain(value, decimals)} ± ${plain(expandedUncertainty, decimals)} ${unitName(unit, less)} of ${analyteName(less)}`;
	return evidence.reading.takenOff
		? `${size} taken off`
		: `what was taken off is not known: reckoned with ${size}`;
}

function daysWords(days: number): string {
	if (days < 1) return 'less than a day before';
	return days === 1 ? 'a day before' : `${plain(days, days % 1 === 0 ? 0 : 1)} days before`;
}

const ratioWords = (ratio: number): string =>
	ratio === 2
		? 'twice the water'
		: ratio === 0.5
			? 'half the water'
			: `${plain(ratio, ratio % 1 === 0 ? 0 : 1)} times the water`;

function risenWords(evidence: EvidenceOf<'addition'>, analyte: Analyte): string {
	const { added, addedExpandedUncertainty, isAddedUncertaintyTaken, reading } = evidence;
	const decimals = decimalsFor(reading.unit, addedExpandedUncertainty, analyte);
	const size = `${plain(added, decimals)} ± ${plain(addedExpandedUncertainty, decimals)} ${unitName(reading.unit, analyte)}`;
	return `raised by ${size}${isAddedUncertaintyTaken ? ' (that ± taken as a twentieth)' : ''}`;
}

/** What was dosed and used up since an earlier reading, as far as it was said; empty where nothing was. */
function sinceWords(
	{ expectedChange, dosed, consumed, reading }: EvidenceOf<'earlier'>,
	analyte: Analyte
): string {
	const unit = unitName(reading.unit, analyte);
	if (expectedChange !== undefined)
		return expectedChange === 0
			? ''
			: `; ${expectedChange > 0 ? '+' : ''}${plain(expectedChange)} ${unit} expected since`;
	if (dosed === undefined && consumed === undefined) return '';
	if (dosed === undefined) return `; since then ${plain(consumed ?? 0)} ${unit} used up`;
	return consumed === undefined
		? `; since then ${plain(dosed)} ${unit} dosed`
		: `; since then ${plain(dosed)} dosed and ${plain(consumed)} ${unit} used up`;
}

function detailOf(evidence: Evidence, analyte: Analyte): string {
	switch (evidence.kind) {
		case 'test': {
			if (evidence.from === 'first')
				return evidence.reading.label === IN_QUESTION ? '' : 'in question';
			const ratio = evidence.differs?.sampleRatio;
			if (ratio !== undefined) {
				const words = ratioWords(ratio);
				return evidence.reading.label.toLowerCase() === words ? 'all else the same' : words;
			}
			if (evidence.differs?.sampleWare !== undefined)
				return 'other glass for the sample, all else the same';
			return (
				{
					repeatFull: 'the same once more',
					repeatQuick: 'the same once more',
					freshLot: 'titrant of another lot',
					freshSample: 'another portion of water',
					otherHands: 'other hands, the same kit',
					largerSample: 'twice the water',
					smallerSample: 'half the water'
				}[evidence.from as string] ?? 'the tank’s water'
			);
		}
		case 'reference': {
			const { nominal, nominalExpandedUncertainty, reading, matrix, instrument } = evidence;
			const decimals = decimalsFor(reading.unit, nominalExpandedUncertainty, analyte);
			const content = `${plain(nominal, decimals)} ± ${plain(nominalExpandedUncertainty, decimals)} ${unitName(reading.unit, analyte)}`;
			const taken = evidence.isNominalUncertaintyTaken ? ' (that ± taken as a twentieth)' : '';
			return `said to hold ${content}${taken}, ${matrixWords[matrix]}${instrument ? `; read by ${instrument}` : ''}`;
		}
		case 'addition':
			return risenWords(evidence, analyte);
		case 'blank':
			return matrixWords[evidence.matrix];
		case 'secondMethod': {
			const { coverageFactor = 2, reports, sampling } = evidence;
			return [
				'a second method',
				coverageFactor === 2 ? '' : `± for k = ${plain(coverageFactor, 0)}`,
				reports === 'carbonate' ? 'carbonate only' : '',
				sampling ? 'water taken anew' : ''
			]
				.filter(Boolean)
				.join(', ');
		}
		case 'earlier': {
			const { instrument, daysAgo } = evidence;
			return `${daysWords(daysAgo)}${instrument ? `, by ${instrument}` : ''}${sinceWords(evidence, analyte)}`;
		}
		case 'weighing':
		case 'cue':
			return '';
	}
}

/**
 * A piece of evidence in words.
 *
 * @param unit of the page
 */
export function evidenceLine(
	evidence: Evidence,
	unit: Unit,
	{ cues }: Catalogue,
	analyte: Analyte = 'alkalinity'
): EvidenceLine {
	if (isValued(evidence))
		return {
			title: evidence.reading.label,
			figure: figureOf(evidence.reading, unit, analyte),
			detail: [
				detailOf(evidence, analyte),
				takenWords(evidence, analyte),
				takenOffWords(evidence, analyte)
			]
				.filter(Boolean)
				.join('; ')
		};
	if (evidence.kind === 'weighing') {
		const percent = (evidence.foundOverNominal - 1) * 100;
		const way = percent < 0 ? 'less than its mark says' : 'more than its mark says';
		return {
			title:
				evidence.ware === 'sample'
					? 'The sample, weighed as water'
					: 'The titrant’s measure, weighed',
			figure: `${plain(Math.abs(percent), 1)} % ${way}`,
			detail: `± ${plain(evidence.expandedUncertainty * 100, 1)} %`
		};
	}
	const cue = cues.find(({ id }) => id === evidence.cue);
	return {
		title: cue?.question ?? evidence.cue,
		figure: cue?.answers.find(({ id }) => id === evidence.answer)?.words ?? evidence.answer,
		detail: ''
	};
}

/** Why the diagnosis cannot use a piece of evidence, as its line says it. */
export const unusedWords = (why: string): string => `Not used: ${why.replace(/\.$/, '')}.`;
