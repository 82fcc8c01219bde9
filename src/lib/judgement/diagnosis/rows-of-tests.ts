import { convertValue } from '../../kits';
import { readingScatter } from '../../metrology';
import type { CheckId, Evidence } from '../../observation';
import { contentOf, thingsOf, type Tested } from './contents';
import type { Row, RowContext } from './row';
import { nothing, OWN, sampleRatioOf, type Things } from './things';

const testsOfTank: readonly ('first' | CheckId)[] = [
	'first',
	'repeatFull',
	'repeatQuick',
	'largerSample',
	'smallerSample',
	'freshLot',
	'freshSample',
	'otherHands',
	'moreBase',
	'thinnedSample',
	'warmSlow',
	'takenOffAnew'
];
export const isTestOfTank = (from: 'first' | CheckId): boolean => testsOfTank.includes(from);

const checkOf: Partial<Record<Evidence['kind'], CheckId>> = {
	reference: 'reference',
	blank: 'blank',
	addition: 'standardAddition'
};
/** By which check a test came about; null for the test in question and for earlier ones. */
function checkBehind(evidence: Tested): CheckId | null {
	if (evidence.kind === 'test') return evidence.from === 'first' ? null : evidence.from;
	return checkOf[evidence.kind] ?? null;
}

/** Ordinary spreads of ware, bottle and hands: by the figures, or by what the reading itself claims. */
function spreadsOf(
	value: number,
	standardUncertainty: number,
	scatterVariance: number,
	isClaimOwn: boolean,
	things: Things,
	context: RowContext
): Pick<Row, 'shares' | 'loadings'> {
	const { method } = context;
	const inUnit = convertValue(1, method.unit, context.water.unit, method.analyte);
	const shares = [
		{ of: `sampleWare:${things.sampleWare}`, amount: method.sampleWareSd },
		{ of: `titrantWare:${things.titrantWare}`, amount: method.titrantWareSd },
		{ of: `lot:${things.lot}`, amount: method.lotSd }
	];
	const endPointSd = method.endPointSd * inUnit;
	const byFigures =
		value ** 2 * shares.reduce((sum, { amount }) => sum + amount ** 2, 0) + endPointSd ** 2;
	const claimed = standardUncertainty ** 2 - scatterVariance;
	// A claim below the figures is believed where it is all that is known of the kit.
	const scale =
		context.isUsualMethod && isClaimOwn && claimed < byFigures
			? Math.sqrt(Math.max(0.1, claimed / byFigures))
			: 1;
	const excess = Math.sqrt(Math.max(0, claimed - byFigures));
	return {
		shares: shares.map(({ of, amount }) => ({ of, amount: amount * scale })),
		loadings: [
			{ of: `hands:${things.hands}`, amount: endPointSd * scale },
			// What a value that was taken off brings along goes with that value.
			...(excess > 0 ? [{ of: kitOf(things), amount: excess }] : [])
		]
	};
}

const kitOf = ({ takenOff }: Things) =>
	takenOff === null || takenOff === OWN ? 'kit' : `kit:${takenOff}`;

/** A test by the kit in question as a row. */
export function rowOfTest(evidence: Tested & Evidence, at: number, context: RowContext): Row {
	const { method, water } = context;
	const { analyte } = method;
	const { reading } = evidence;
	const inUnit = (value: number) => convertValue(value, reading.unit, water.unit, analyte);
	const toMethod = (value: number) => convertValue(value, water.unit, method.unit, analyte);
	const unitOfMethod = convertValue(1, method.unit, water.unit, analyte);
	const value = inUnit(reading.value);
	const things = { ...nothing, ...thingsOf(evidence, inUnit) };
	const ratio = sampleRatioOf(evidence.differs, evidence.kind === 'test' ? evidence.from : 'first');
	const { repeatabilitySd } = reading;
	const scatter = readingScatter(method, {
		value: toMethod(value),
		sampleRatio: ratio,
		...(repeatabilitySd === undefined ? {} : { repeatabilitySd: toMethod(inUnit(repeatabilitySd)) })
	});
	const scatterVariance = scatter.variance * unitOfMethod ** 2;
	const content = contentOf(evidence, things, context, inUnit);
	const spreads = spreadsOf(
		value,
		inUnit(reading.expandedUncertainty) / 2,
		scatterVariance,
		repeatabilitySd !== undefined,
		things,
		context
	);
	const from = checkBehind(evidence);
	const perMl = (method.valuePerMl / ratio) * unitOfMethod;
	return {
		at,
		value,
		isInQuestion: at === context.firstAt,
		isEarlier: evidence.kind === 'earlier',
		...(from === null ? {} : { from }),
		things,
		weighed: null,
		perMl,
		amountMean: content.amountMean,
		amountLoadings: content.amountLoadings,
		shares: spreads.shares,
		loadings: [...spreads.loadings, ...content.effects],
		shift: content.shift,
		scatterVariance,
		sharedStepVariance: scatter.sharedStepVariance * unitOfMethod ** 2,
		step: perMl * method.dropMl * method.endStepDrops,
		alike: JSON.stringify([
			evidence.kind === 'test' ? 'tank' : evidence.kind,
			things,
			ratio,
			evidence.kind === 'addition' ? evidence.reading.id : ''
		])
	};
}
