import {
	decimalsFor,
	plausibleRange,
	typedNumber,
	unitName,
	type TypedRange,
	type Unit
} from '$lib/kits';
import type { ConsistencyInput, KnownValue } from '$lib/judgement';
import { plain } from '../charts/numbers';
import { unknownKitUncertainty } from '../conversation/forms/unknown-kit';
import { salinityField } from '../decision/salinity-field';
import type { Meant } from '../decision/tank-fields';

/** What is kept of a tank and looked at together. */
export const lookedAt = ['alkalinity', 'calcium', 'magnesium'] as const;
export type LookedAt = (typeof lookedAt)[number];
export type UnitFor = (analyte: LookedAt) => Unit;

/** One blank. */
export type TogetherField = {
	name: string;
	label: string;
	unit?: string;
	hint?: string;
	/** For the message: 'the calcium'. */
	what: string;
	range: TypedRange;
	/** What somebody may have meant by what cannot be, in a sentence. */
	meantBy?: (text: string) => Meant | null;
};

/** A value and its ± of an analyte. */
function valueFields(analyte: LookedAt, name: string, label: string, unit: Unit): TogetherField[] {
	const high = plausibleRange(unit, analyte).high * 2;
	const called = unitName(unit, analyte);
	const isUse = name !== analyte;
	return [
		{
			name,
			label,
			unit: called,
			what: `the ${analyte}`,
			range: {
				low: isUse ? -high : 0,
				high,
				why: `That is ${isUse ? 'no more than' : 'from 0 to'} ${plain(high, 0)} ${called}`
			}
		},
		{
			name: `${name}U`,
			label: `± of ${isUse ? 'what was used up of ' : ''}${analyte}`,
			unit: called,
			what: `the ± of the ${analyte}`,
			range: { low: high / 1e4, high: high / 2, why: 'A ± is more than 0 and below the value' }
		}
	];
}

const titles = { alkalinity: 'Alkalinity', calcium: 'Calcium', magnesium: 'Magnesium' };

/** The three values, each with its ±. */
export const valueFieldsOf = (unitFor: UnitFor): TogetherField[][] =>
	lookedAt.map((analyte) => valueFields(analyte, analyte, titles[analyte], unitFor(analyte)));

/** The water that they were measured in. */
export const waterFields: TogetherField[] = [
	{
		...salinityField,
		range: { low: 20, high: 43, why: 'A marine tank lies between 20 and 43' }
	},
	{
		name: 'salinityU',
		label: '± of the salinity',
		hint: 'Left empty: 1.',
		what: 'the ± of the salinity',
		range: { low: 0.01, high: 5, why: 'A ± of salinity lies between 0.01 and 5' }
	},
	{
		name: 'ph',
		label: 'pH',
		hint: 'Only for the saturation of aragonite.',
		what: 'the pH',
		range: { low: 7, high: 9, why: 'The pH of a reef tank lies between 7 and 9' }
	},
	{
		name: 'temperatureC',
		label: 'Temperature',
		unit: '°C',
		hint: 'Left empty: 25.',
		what: 'the temperature',
		range: { low: 10, high: 35, why: 'The water of a tank is between 10 and 35 degrees Celsius' }
	}
];

/** What was used up between two days, dosing added back. */
export const useFieldsOf = (unitFor: UnitFor): TogetherField[][] => [
	valueFields('alkalinity', 'usedAlkalinity', 'Alkalinity used up', unitFor('alkalinity')),
	valueFields('calcium', 'usedCalcium', 'Calcium used up', unitFor('calcium'))
];

/** ± of a test by a kit that nobody knows, at a value; in the middle of what tanks hold where there is none. */
function usualUncertainty(analyte: LookedAt, value: number | undefined, unit: Unit): number {
	const { low, high } = plausibleRange(unit, analyte);
	return unknownKitUncertainty(value ?? (low + high) / 2, unit, analyte);
}

export type TogetherTexts = Readonly<Record<string, string>>;
export type TogetherRead = {
	input: ConsistencyInput;
	problems: Record<string, string>;
	/** As what something else, or an empty blank, was taken, by the blank. */
	notes: Record<string, string>;
};

/** What was typed, as far as it can be; for a value without its ± a usual one is taken, and it is said at its blank. */
export function readTogether(
	texts: TogetherTexts,
	unitFor: UnitFor,
	isMagnesiumByDifference: boolean
): TogetherRead {
	const problems: Record<string, string> = {};
	const notes: Record<string, string> = {};
	const values: Record<string, number> = {};
	const fields = [...valueFieldsOf(unitFor), waterFields, ...useFieldsOf(unitFor)].flat();
	for (const { name, what, range, meantBy } of fields) {
		const text = texts[name] ?? '';
		if (text.trim() === '') continue;
		const typed = typedNumber(text, what, range);
		if ('value' in typed) {
			values[name] = typed.value;
			continue;
		}
		const meant = meantBy?.(text) ?? null;
		const taken = meant?.isTaken ? Number(meant.instead) : Number.NaN;
		if (meant && taken >= range.low && taken <= range.high) {
			values[name] = taken;
			notes[name] = meant.words;
		} else problems[name] = [typed.problem, meant?.words].filter(Boolean).join(' ');
	}
	const known = (analyte: LookedAt, name: string): KnownValue | undefined => {
		const value = values[name];
		// What was typed there and is no ± is not passed over.
		if (value === undefined || problems[`${name}U`]) return undefined;
		const unit = unitFor(analyte);
		const typed = values[`${name}U`];
		if (typed !== undefined) return { value, expandedUncertainty: typed, unit };
		const usual = usualUncertainty(analyte, name === analyte ? value : values[analyte], unit);
		const taken = name === analyte ? usual : Math.SQRT2 * usual;
		const shown = plain(taken, decimalsFor(unit, taken, analyte));
		notes[`${name}U`] =
			`Taken as ${shown}: usual ${name === analyte ? 'for a kit' : 'for two tests by a kit'}.`;
		return { value, expandedUncertainty: taken, unit };
	};
	const both = {
		alkalinity: known('alkalinity', 'usedAlkalinity'),
		calcium: known('calcium', 'usedCalcium')
	};
	const { salinity, salinityU, ph, temperatureC } = values;
	const input = {
		...Object.fromEntries(
			lookedAt.flatMap((analyte) => {
				const value = known(analyte, analyte);
				return value ? [[analyte, value]] : [];
			})
		),
		...(salinity === undefined
			? {}
			: {
					salinity: {
						value: salinity,
						...(salinityU === undefined ? {} : { expandedUncertainty: salinityU })
					}
				}),
		...(ph === undefined ? {} : { ph: { value: ph } }),
		...(temperatureC === undefined ? {} : { temperatureC }),
		...(both.alkalinity && both.calcium
			? { usedUp: { alkalinity: both.alkalinity, calcium: both.calcium } }
			: {}),
		isMagnesiumByDifference
	};
	return { input, problems, notes };
}
