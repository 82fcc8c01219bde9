import { convertValue } from '../../kits';
import type { EvidenceOf } from '../../observation';
import type { Loading, Row, RowContext } from './row';
import { solutionOf } from './contents';
import { solution, tankNow, tankThen } from './tank-amount';
import { nothing, OWN } from './things';

/**
 * Of the variance that a second method claims, so much lasts for the instrument and is in each of its
 * readings; judgement, for those that do not say what falls anew.
 */
const LASTING_SHARE = 0.75;

type Read = EvidenceOf<'secondMethod' | 'reference' | 'earlier'>;

/** Name of what read it: readings of one instrument share its offset. */
export const instrumentOf = (evidence: Read): string =>
	evidence.instrument ?? ('method' in evidence ? evidence.method : undefined) ?? 'secondMethod';

/** A reading by another method as a row. What it claims is all that is known of it. */
export function rowOfInstrument(evidence: Read, at: number, context: RowContext): Row {
	const { water, method } = context;
	const { reading } = evidence;
	const inUnit = (value: number) => convertValue(value, reading.unit, water.unit, method.analyte);
	const instrument = instrumentOf(evidence);
	const factor = 'coverageFactor' in evidence ? (evidence.coverageFactor ?? 2) : 2;
	const variance = (inUnit(reading.expandedUncertainty) / factor) ** 2;
	const own = reading.repeatabilitySd;
	const scatterVariance =
		own === undefined ? variance * (1 - LASTING_SHARE) : Math.min(variance * 0.9, inUnit(own) ** 2);
	const loadings: Loading[] = [
		{ of: `instrument:${instrument}`, amount: Math.sqrt(variance - scatterVariance) }
	];
	const base = {
		at,
		value: inUnit(reading.value),
		isInQuestion: false,
		weighed: null,
		perMl: 0,
		shares: [],
		loadings,
		scatterVariance,
		sharedStepVariance: 0,
		step: 0,
		alike: ''
	};
	if (evidence.kind === 'reference') {
		const name = solutionOf(evidence, inUnit);
		const nominal = inUnit(evidence.nominal);
		if (evidence.matrix !== 'seawater')
			loadings.push({
				of: `matrix:${evidence.matrix}:${instrument}`,
				amount: water.matrixSdOfInstrument
			});
		return {
			...base,
			...solution(name, nominal, inUnit(evidence.nominalExpandedUncertainty)),
			isEarlier: false,
			things: { ...nothing, instrument, solution: name },
			shift: 0
		};
	}
	if (evidence.kind === 'earlier')
		return {
			...base,
			...tankThen(context, evidence, inUnit),
			isEarlier: true,
			things: { ...nothing, instrument, sampling: `days:${evidence.daysAgo}` },
			shift: 0
		};
	const sampling = evidence.sampling === undefined ? OWN : `named:${evidence.sampling}`;
	const isCarbonate = evidence.reports === 'carbonate';
	if (isCarbonate) loadings.push({ of: 'leftOut', amount: water.leftOut.standardDeviation });
	return {
		...base,
		...tankNow(context, sampling),
		isEarlier: false,
		things: { ...nothing, instrument, sampling },
		shift: isCarbonate ? -water.leftOut.mean : 0
	};
}
