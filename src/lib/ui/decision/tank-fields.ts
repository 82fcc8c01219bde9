import { convertValue, numberText, plausibleRange, typedNumber, unitName } from '$lib/kits';
import type { Analyte, TypedRange, Unit } from '$lib/kits';
import { bandInWords, limitsOf, type Band } from '$lib/judgement';
import type { Tank } from '$lib/observation';
import { plain } from '../charts/numbers';

/** What is asked of a tank, number by number. */
export type TankField = {
	name: Exclude<keyof Tank, 'unit' | 'hasStonyCorals' | 'who'>;
	label: string;
	/** Behind the blank. */
	unit?: string;
	hint?: string;
	/** For the message: 'the volume'. */
	what: string;
	range: TypedRange;
	/** What somebody may have meant by what cannot be. */
	meantBy?: (text: string) => Meant | null;
	/** What stands against a number that can be, and is known all the same: no plan is made with it. */
	against?: (value: number) => string | null;
};

/**
 * What a number that cannot be may have been meant for, and what to write instead of it. It is taken as that
 * where it can mean nothing else.
 */
export type Meant = { words: string; instead: string | null; isTaken?: boolean };

/** A temperature that was read on the other scale. */
function celsiusMeantBy(text: string): Meant | null {
	const typed = typedNumber(text, '', { low: 59, high: 95, why: '' });
	if (!('value' in typed)) return null;
	const instead = plain(((typed.value - 32) * 5) / 9, 1);
	return { words: `If that is in Fahrenheit, it is ${instead} °C.`, instead };
}

/** Tanks hold no more than so many times the highest that is plausible. */
const ROOM = 2;

/** Where somebody wants the tank. */
export function bandFields(unit: Unit, analyte: Analyte): TankField[] {
	const high = plausibleRange(unit, analyte).high * ROOM;
	const name = unitName(unit, analyte);
	const range = {
		low: high / 1e4,
		high,
		why: `A tank holds more than 0 and up to ${plain(high, 0)} ${name}`
	};
	return [
		{
			name: 'bandLow',
			label: 'You want it no lower than',
			unit: name,
			what: 'the lower end',
			range
		},
		{ name: 'bandHigh', label: 'And no higher than', unit: name, what: 'the upper end', range }
	];
}

/** A value to aim at beyond what somebody wants, or beyond what any advice aims at. */
function againstTarget(unit: Unit, analyte: Analyte, band?: Pick<Band, 'low' | 'high' | 'unit'>) {
	const { sensible, unit: own } = limitsOf(analyte);
	const within = [...(band ? [band] : []), { ...sensible, unit: own }].map((each) => ({
		low: convertValue(each.low, each.unit, unit, analyte),
		high: convertValue(each.high, each.unit, unit, analyte),
		unit
	}));
	return (value: number): string | null => {
		const i = within.findIndex(({ low, high }) => value < low - 1e-9 || value > high + 1e-9);
		const beyond = within[i];
		if (!beyond) return null;
		const size = bandInWords(beyond, analyte);
		return band && i === 0
			? `That is outside the ${size} you want: there is no plan for it.`
			: `No plan aims beyond ${size}.`;
	};
}

/**
 * What a correction needs to know.
 *
 * @param band where somebody wants it, for what is said at the value to aim at
 */
export function correctionFields(
	unit: Unit,
	analyte: Analyte,
	band?: Pick<Band, 'low' | 'high' | 'unit'>
): TankField[] {
	const name = unitName(unit, analyte);
	const [first] = bandFields(unit, analyte);
	const most = plausibleRange(unit, analyte).high;
	const perDay = {
		low: 0,
		high: most,
		why: `In a day that is from 0 to ${plain(most, 0)} ${name}`
	};
	const { rise, unit: own } = limitsOf(analyte);
	const cap = convertValue(rise.hardCapPerDay, own, unit, analyte);
	const usual = convertValue(rise.usualPerDay, own, unit, analyte);
	const decimals = cap < 3 ? 1 : 0;
	return [
		{
			name: 'target',
			label: 'Bring it to',
			unit: name,
			what: 'the value to aim at',
			range: first?.range ?? perDay,
			against: againstTarget(unit, analyte, band)
		},
		{
			name: 'waterL',
			label: 'Water in all',
			unit: 'L',
			hint: 'Display and sump, less rock, sand and what is not filled.',
			what: 'the volume',
			range: { low: 1, high: 100_000, why: 'A system holds from 1 to 100000 litres' }
		},
		{
			name: 'waterExpandedUncertaintyL',
			label: 'Give or take',
			unit: 'L',
			hint: 'Left empty: a tenth of it.',
			what: 'by how much it may be more or less',
			range: { low: 0, high: 50_000, why: 'That is from 0 litres up to half of the water' }
		},
		{
			name: 'consumptionPerDay',
			label: 'Used up in a day',
			unit: name,
			hint: 'The fall over some days without dosing, divided by the days.',
			what: 'what is used up in a day',
			range: perDay
		},
		{
			name: 'dosedPerDay',
			label: 'Dosed in a day by what goes on running',
			unit: name,
			hint: '0 if nothing runs. Leave both empty if they are in balance.',
			what: 'what is dosed in a day',
			range: perDay
		},
		{
			name: 'temperatureC',
			label: 'Temperature',
			unit: '°C',
			what: 'the temperature',
			range: {
				low: 10,
				high: 40,
				why: 'The water of a tank is between 10 and 40 degrees Celsius'
			},
			meantBy: celsiusMeantBy
		},
		{
			name: 'ph',
			label: 'pH now',
			hint: 'Left empty: 8.1.',
			what: 'the pH',
			range: { low: 6, high: 10, why: 'The pH of a tank lies between 6 and 10' }
		},
		{
			name: 'maxRisePerDay',
			label: 'At most, in a day',
			unit: name,
			hint: `Left empty: ${plain(usual, decimals)}. Never more than ${plain(cap, decimals)}.`,
			what: 'the most in a day',
			range: {
				low: cap / 100,
				high: cap,
				why: `It is moved by more than 0 and no more than ${plain(cap, decimals)} ${name} in a day`
			}
		},
		{
			name: 'evaporationLPerDay',
			label: 'Evaporates in a day',
			unit: 'L',
			hint: 'Only for limewater, which takes its place.',
			what: 'what evaporates in a day',
			range: { low: 0, high: 1000, why: 'That is from 0 to 1000 litres' }
		}
	];
}

export type TankTexts = Partial<Record<TankField['name'], string>>;

/**
 * What was typed, as far as it can be, and what is wrong with it. What cannot be is not known, rather than what it was before;
 * `instead` is what may be written in its place, `notes` say as what something else was taken.
 */
export function readTank(
	texts: TankTexts,
	fields: readonly TankField[]
): { tank: Tank; problems: TankTexts; instead: TankTexts; notes: TankTexts } {
	const tank: Tank = {};
	const problems: TankTexts = {};
	const instead: TankTexts = {};
	const notes: TankTexts = {};
	for (const { name, what, range, meantBy, against } of fields) {
		const text = texts[name] ?? '';
		if (text.trim() === '') continue;
		const typed = typedNumber(text, what, range);
		if ('value' in typed) {
			tank[name] = typed.value;
			const objection = against?.(typed.value) ?? null;
			if (objection !== null) problems[name] = objection;
			continue;
		}
		const meant = meantBy?.(text) ?? null;
		if (meant?.isTaken && meant.instead !== null) {
			tank[name] = Number(meant.instead);
			notes[name] = meant.words;
			continue;
		}
		problems[name] = meant ? `${typed.problem} ${meant.words}` : typed.problem;
		if (meant?.instead) instead[name] = meant.instead;
	}
	const { waterL, waterExpandedUncertaintyL: unsureL } = tank;
	if (waterL !== undefined && unsureL !== undefined && unsureL > waterL / 2) {
		problems.waterExpandedUncertaintyL = `That is from 0 litres up to half of the water; found ${texts.waterExpandedUncertaintyL}.`;
		delete tank.waterExpandedUncertaintyL;
	}
	if (tank.bandLow !== undefined && tank.bandHigh !== undefined && tank.bandLow > tank.bandHigh) {
		problems.bandHigh = `The upper end lies below the lower; found ${texts.bandLow} and ${texts.bandHigh}.`;
		delete tank.bandLow;
		delete tank.bandHigh;
	}
	return { tank, problems, instead, notes };
}

/** What is known already, as it would be typed. */
export function textsOf(tank: Tank, fields: readonly TankField[]): TankTexts {
	return Object.fromEntries(
		fields.flatMap(({ name }) => {
			const value = tank[name];
			return value === undefined ? [] : [[name, numberText(value)]];
		})
	);
}
