import { chelationConstants, type ChelationConstants } from './chelation-constants';
import type { EdtaTitration } from './chelation-titration';
import { metalDyeIds } from './metal-dyes';
import { requireObject, requireWithin } from './require-within';

/** A range of each number that may stand under a field. */
type Ranges = Record<string, readonly [low: number, high: number]>;

/** Every number of a record that is there lies in its range; named as the caller wrote it: 'base.volumeMl'. */
function requireEach(under: string, record: object, ranges: Ranges): void {
	const found = record as Record<string, number | undefined>;
	for (const [field, [low, high]] of Object.entries(ranges))
		if (found[field] !== undefined) requireWithin(`${under}${field}`, found[field], low, high);
}

/** Every key of a record is one that is known: a constant under a name of nobody would change nothing. */
function requireKnown(under: string, record: object, known: readonly string[]): void {
	for (const key of Object.keys(record))
		if (!known.includes(key))
			throw new RangeError(
				`${under}${key} must be left out: ${under.slice(0, -1)} may hold ${known.join(', ')}; found ${key}`
			);
}

const volume = [0, 1e6] as const;
const ofTitration: Ranges = {
	edtaHydroxidePerMol: [0, 2],
	edtaBeforeMl: volume,
	waitSeconds: [0, Infinity],
	pathCm: [0, 1000]
};
/** Of an addition: what must be there, and what may. */
type Addition = { must: Ranges; may: Ranges };
const ofAdditions = {
	water: {
		must: { volumeMl: volume },
		may: {
			calciumMolPerL: [0, 2],
			magnesiumMolPerL: [0, 2],
			alkalinityMolPerL: [-20, 20],
			dicMolPerL: [0, 20]
		}
	},
	base: {
		must: { volumeMl: volume, hydroxideMolPerL: [0, 15], carbonateMolPerL: [0, 5] },
		may: {}
	},
	ammoniaBuffer: {
		must: { volumeMl: volume, ammoniaMolPerL: [0, 16], ammoniumMolPerL: [0, 6] },
		may: {}
	}
} satisfies Partial<Record<keyof EdtaTitration, Addition>>;

/** Of a dose of indicator: an amount, or volume and strength. */
const ofIndicator = {
	amount: { mol: [0, 10] },
	solution: { volumeMl: volume, molPerL: [0, 10] }
} satisfies Record<string, Ranges>;

function requireIndicator(indicator: EdtaTitration['indicator']): void {
	if (indicator === undefined) return;
	const { dyeId } = requireObject('indicator', indicator);
	if (!metalDyeIds.includes(dyeId))
		throw new RangeError(
			`indicator.dyeId must be one of ${metalDyeIds.join(', ')}; found ${String(dyeId)}`
		);
	requireAll(
		'indicator.',
		indicator,
		'mol' in indicator ? ofIndicator.amount : ofIndicator.solution
	);
}

/**
 * What is said of a titration beside its sample lies in its range.
 *
 * @throws RangeError naming the field as it stands in the titration
 */
export function requireTitration(titration: EdtaTitration): void {
	requireObject('titration', titration);
	requireWithin('edtaMolPerL', titration.edtaMolPerL, 0, 2);
	requireEach('', titration, ofTitration);
	for (const [field, { must, may }] of Object.entries<Addition>(ofAdditions)) {
		const addition = titration[field as keyof typeof ofAdditions];
		if (addition === undefined) continue;
		requireObject(field, addition);
		requireAll(`${field}.`, addition, must);
		requireEach(`${field}.`, addition, may);
	}
	requireIndicator(titration.indicator);
}

/** Equilibrium constants as logarithms; beyond, powers of ten of them are no numbers any more. */
const logarithm = [-50, 50] as const;
const ofEdta: Ranges = {
	logKCalcium: logarithm,
	logKMagnesium: logarithm,
	logKStrontium: logarithm,
	saltLowering: [-10, 10]
};
const time = [1e-9, 1e9] as const;
const ofHydroxide: Ranges = {
	logK: logarithm,
	seawaterOnsetShiftPh: [-5, 5],
	formingSeconds: time,
	nucleationWidthPh: [0, 20],
	dissolvingSeconds: time,
	occlusionLPerMol: [0, 1e6],
	dyeAdsorptionLPerMol: [0, 1e6],
	carbonateInductionMolSPerL: [0, 1e9],
	carbonateGrowthMolSPerL: [1e-9, 1e9],
	// Beyond, the share left is nothing, and what the hydroxide holds of it could not be told.
	carbonateMost: [0, 20]
};

/** A whole set: a number that is missing is as wrong as one out of range. */
function requireAll(under: string, record: object, ranges: Ranges): void {
	const found = record as Record<string, number>;
	for (const [field, [low, high]] of Object.entries(ranges))
		requireWithin(`${under}${field}`, found[field]!, low, high);
}

const ofDyeLogK: Ranges = { calcium: logarithm, magnesium: logarithm };

const sound = new WeakSet<ChelationConstants>();

/**
 * Constants with which a vial can be worked out: all there, finite and in their ranges, and none beside
 * them that nothing would look at.
 *
 * @throws RangeError naming the constant: 'constants.edta.pKa[2]'
 */
export function requireConstants(constants: ChelationConstants): ChelationConstants {
	if (sound.has(constants)) return constants;
	const under = 'constants.';
	const { edta, hydroxide, ammoniumPKa, dyeLogK } = constants;
	requireKnown(under, constants, Object.keys(chelationConstants));
	requireAll(`${under}edta.`, requireObject(`${under}edta`, edta), ofEdta);
	requireKnown(`${under}edta.`, edta, [...Object.keys(ofEdta), 'pKa', 'logKSodium']);
	const { pKa, logKSodium } = edta;
	if (!Array.isArray(pKa) || pKa.length === 0)
		throw new RangeError(`${under}edta.pKa must hold a step or more; found ${String(pKa)}`);
	pKa.forEach((step, i) => requireWithin(`${under}edta.pKa[${i}]`, step, -10, 20));
	if (logKSodium !== null) requireWithin(`${under}edta.logKSodium`, logKSodium, -50, 50);
	requireAll(`${under}hydroxide.`, requireObject(`${under}hydroxide`, hydroxide), ofHydroxide);
	requireKnown(`${under}hydroxide.`, hydroxide, Object.keys(ofHydroxide));
	requireWithin(`${under}ammoniumPKa`, ammoniumPKa, 0, 14);
	requireKnown(`${under}dyeLogK.`, requireObject(`${under}dyeLogK`, dyeLogK), metalDyeIds);
	for (const [dyeId, logK] of Object.entries(dyeLogK)) {
		const ofDye = `${under}dyeLogK.${dyeId}`;
		requireEach(`${ofDye}.`, requireObject(ofDye, logK), ofDyeLogK);
		requireKnown(`${ofDye}.`, logK, Object.keys(ofDyeLogK));
	}
	sound.add(constants);
	return constants;
}
