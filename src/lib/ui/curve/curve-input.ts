import { densityKgPerL, molPerKgFromDkh, type ProbeAlkalinityOptions } from '$lib/chemistry';
import { convertValue, unitsOf, type Unit } from '$lib/kits';
import { BlanksRead, type Blanks } from '../recipe/blanks';

/** What was titrated. The first is taken while nothing was chosen. */
export const waters = {
	tank: 'water from the tank',
	seawater: 'a known solution in sea salt',
	sodiumChloride: 'a known solution in table salt',
	purified: 'a known solution in pure water'
} as const;
export type Water = keyof typeof waters;

export const vessels = {
	open: 'in an open glass or beaker',
	closed: 'closed, no air over it'
} as const;
export const meters = {
	buffers: 'today, on two buffers of pH 4, 7 or 10',
	seawaterBuffers: 'today, on buffers made up in seawater',
	notSet: 'not today, or on one buffer'
} as const;
export const acidWaters = { water: 'pure water', sodiumChloride: 'salt water' } as const;

/** Where blanks are left empty. */
export const USUAL_SALINITY = 35;
export const USUAL_TEMPERATURE_C = 25;

export type Known = { value: number; expandedUncertainty: number };
export type CurveInput = {
	water: Water;
	unit: Unit;
	/** Null while a blank is missing or wrong. */
	options: ProbeAlkalinityOptions | null;
	/** What a known solution is said to hold, in `unit`. */
	known: Known | null;
	problems: Readonly<Record<string, string>>;
	/** Blanks that are needed and still empty. */
	missing: readonly ('sample' | 'acid' | 'known')[];
};

const percent = { low: 0.01, high: 50, why: 'A ± in per cent lies between 0.01 and 50' };

/** The unit in which a content was typed, whatever is preferred now. */
const unitOfBlanks = (blanks: Blanks, preferred: Unit): Unit =>
	unitsOf('alkalinity').find((unit) => unit === blanks.unit) ?? preferred;

/**
 * Everything but the readings. A ± that is typed holds about 19 times in 20: its half is the standard
 * uncertainty. One that is left empty stays with what `alkalinityOfProbeTitration` takes for it.
 */
export function curveInput(blanks: Blanks, preferred: Unit): CurveInput {
	const reader = new BlanksRead(blanks);
	const unit = unitOfBlanks(blanks, preferred);
	const water = reader.choice('water', waters);
	const within = (low: number, high: number, of: string) => ({
		low,
		high,
		why: `${of} lies between ${low} and ${high}`
	});
	const sampleMl = reader.optional('sample', 'the sample', within(0.1, 5000, 'A sample in mL'));
	const samplePercent = reader.optional('sampleU', 'its ± in per cent', percent);
	const acid = reader.optional('acid', 'the strength', within(0.0001, 12, 'A strength in mol/L'));
	const acidPercent = reader.optional('acidU', 'its ± in per cent', percent);
	const deliveryPercent = reader.optional('deliveryU', 'its ± in per cent', percent);
	const salinity =
		water === 'purified'
			? 0
			: reader.number('salinity', 'the salinity', within(0, 45, 'Salinity'), `${USUAL_SALINITY}`);
	const temperatureC = reader.number(
		'temperature',
		'the temperature',
		within(0, 40, 'A temperature in °C'),
		`${USUAL_TEMPERATURE_C}`
	);
	const isKnown = water !== 'tank';
	const reach = convertValue(100, 'dKH', unit);
	const content = { low: reach / 1e4, high: reach, why: 'That is outside what can be titrated' };
	const nominal = isKnown ? reader.optional('known', 'what it holds', content) : undefined;
	const meter = reader.choice('meter', meters);
	const nominalU = isKnown ? reader.optional('knownU', 'its ±', content) : undefined;

	const known =
		typeof nominal === 'number' && nominalU !== null
			? { value: nominal, expandedUncertainty: nominalU ?? UNSURE_CONTENT * nominal }
			: null;
	const isSound = Object.keys(reader.problems).length === 0;
	const asShare = (typed: number | null | undefined) =>
		typeof typed === 'number' ? typed / 200 : undefined;
	const options = (): ProbeAlkalinityOptions | null => {
		if (!isSound || typeof sampleMl !== 'number' || typeof acid !== 'number') return null;
		if (salinity === null || temperatureC === null) return null;
		const density = densityKgPerL(salinity, temperatureC);
		const molPerKg = (value: number) => molPerKgFromDkh(convertValue(value, unit, 'dKH'), density);
		const [acidShare, sampleShare, deliveryShare] = [
			asShare(acidPercent),
			asShare(samplePercent),
			asShare(deliveryPercent)
		];
		return {
			sampleVolumeMl: sampleMl,
			acidMolPerL: acid,
			salinity,
			temperatureC,
			vessel: reader.choice('vessel', vessels),
			acidMatrix: reader.choice('acidWater', acidWaters),
			matrix: water === 'tank' ? 'seawater' : water,
			...(meter === 'notSet' ? {} : { meterSetOn: meter }),
			...(acidShare === undefined ? {} : { acidStandardUncertaintyMolPerL: acid * acidShare }),
			...(sampleShare === undefined ? {} : { sampleRelativeStandardUncertainty: sampleShare }),
			...(deliveryShare === undefined
				? {}
				: { deliveryRelativeStandardUncertainty: deliveryShare }),
			...(known
				? {
						known: {
							alkalinityMolPerKg: molPerKg(known.value),
							standardUncertaintyMolPerKg: molPerKg(known.expandedUncertainty) / 2
						}
					}
				: {})
		};
	};
	return {
		water,
		unit,
		options: options(),
		known,
		problems: reader.problems,
		missing: [
			...(sampleMl === undefined ? (['sample'] as const) : []),
			...(acid === undefined ? (['acid'] as const) : []),
			...(isKnown && nominal === undefined ? (['known'] as const) : [])
		]
	};
}
/** Where nobody says how sure a content is: a share of it. Judgement, as in the sentence of a check. */
const UNSURE_CONTENT = 0.05;
