import { convertValue } from '../kits';
import { readingScatter } from '../metrology';
import type { CheckId, Evidence, EvidenceOf } from '../observation';
import type { Loading, Row, RowContext } from './row';
import { solution, tankNow, tankThen } from './tank-amount';
import { nothing, sampleRatioOf, thingsOfTest, type Things } from './things';

type Tested = EvidenceOf<'test' | 'reference' | 'addition' | 'blank' | 'earlier'>;

const testsOfTank: readonly ('first' | CheckId)[] = [
	'first',
	'repeatFull',
	'repeatQuick',
	'largerSample',
	'smallerSample',
	'freshLot',
	'freshSample',
	'otherHands'
];
export const isTestOfTank = (from: 'first' | CheckId): boolean => testsOfTank.includes(from);

/** Readings of one solution share it; a solution without a name is known by what it holds. */
export const solutionOf = (
	evidence: EvidenceOf<'reference'>,
	inUnit: (value: number) => number
): string =>
	evidence.solution === undefined
		? `unnamed:${evidence.matrix}:${inUnit(evidence.nominal).toPrecision(6)}`
		: `named:${evidence.solution}`;

function thingsOf(evidence: Tested, inUnit: (value: number) => number): Things {
	switch (evidence.kind) {
		case 'test':
			return thingsOfTest(evidence.differs, evidence.from);
		case 'reference':
			return {
				...thingsOfTest(evidence.differs, 'first'),
				sampling: null,
				solution: solutionOf(evidence, inUnit)
			};
		case 'blank':
			return { ...thingsOfTest(evidence.differs, 'first'), sampling: null };
		case 'earlier':
			return {
				...thingsOfTest(evidence.differs, 'first'),
				sampling: `days:${evidence.daysAgo}`
			};
		case 'addition':
			return thingsOfTest(evidence.differs, 'first');
	}
}

/** What was in the vial, and by how much a sound kit reads it otherwise. */
function contentOf(
	evidence: Tested,
	things: Things,
	context: RowContext,
	inUnit: (value: number) => number
): Pick<Row, 'amountMean' | 'amountLoadings' | 'shift'> & { effects: Loading[] } {
	const none = { shift: 0, effects: [] };
	const effectOf = (matrix: 'seawater' | 'purified' | 'sodiumChloride') => {
		const { mean, standardDeviation } = context.water.matrixEffect[matrix];
		return {
			shift: mean,
			effects: [{ of: `matrix:${matrix}`, amount: standardDeviation }]
		};
	};
	switch (evidence.kind) {
		case 'test':
			return { ...tankNow(context, things.sampling), ...none };
		case 'earlier':
			return {
				...tankThen(context, evidence.daysAgo, inUnit(evidence.expectedChange ?? 0)),
				...none
			};
		case 'addition': {
			const now = tankNow(context, things.sampling);
			const added = inUnit(evidence.added);
			const sd = inUnit(evidence.addedExpandedUncertainty) / 2;
			return {
				amountMean: now.amountMean + added,
				amountLoadings: [...now.amountLoadings, { of: `added:${evidence.reading.id}`, amount: sd }],
				...none
			};
		}
		case 'reference':
			return {
				...solution(
					things.solution ?? '',
					inUnit(evidence.nominal),
					inUnit(evidence.nominalExpandedUncertainty)
				),
				...effectOf(evidence.matrix)
			};
		case 'blank':
			return {
				amountMean: 0,
				amountLoadings: [{ of: `blank:${evidence.matrix}`, amount: context.water.blankSd }],
				shift: 0,
				effects: [{ of: `blankEnd:${evidence.matrix}`, amount: context.water.blankEndSd }]
			};
	}
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
			...(excess > 0 ? [{ of: 'kit', amount: excess }] : [])
		]
	};
}

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
	const perMl = (method.valuePerMl / ratio) * unitOfMethod;
	return {
		at,
		value,
		isInQuestion: at === context.firstAt,
		isEarlier: evidence.kind === 'earlier',
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
