import { convertValue, unitName } from '../../kits';
import { amountFor, type KnownCorrection } from './correction-amount';
import type { PlanDay } from './correction';
import {
	CALCIUM_MG_PER_MEQ,
	countedIn,
	MEQ_PER_L_OF_LIMEWATER,
	meansFigures
} from './correction-means';
import { isPowder, molarMassOf, powderOf } from './correction-powders';

/** A figure to calculate with: four digits, without an exponent. */
export function figure(value: number): string {
	return String(Number(value.toPrecision(4))).replace('-', '−');
}

/** An amount to measure out: two digits, as no volume of a tank is known better. */
export function amountInWords(amount: number, unit: 'g' | 'mL' | 'L'): string {
	return `${Number(amount.toPrecision(2))} ${unit}`;
}

type SumInput = {
	plan: KnownCorrection;
	days: readonly PlanDay[];
	daysInAll: number;
	netPerDay: number;
	additionPerDay: number;
	totalAmount: number;
};

function powderLines(plan: KnownCorrection, thousandths: number, amount: number): string[] {
	const { means } = plan;
	if (!isPowder(means)) return [];
	const perMol = 1000 * powderOf(means).perMol;
	const pure = amount * means.purity;
	return [
		`${figure(thousandths)} × ${figure(molarMassOf(means))} ÷ ${perMol} = ${figure(pure)} g of the pure powder`,
		...(means.purity === 1
			? []
			: [`${figure(pure)} ÷ ${figure(means.purity)} = ${figure(amount)} g of yours`])
	];
}

function meansLines({ plan, days, additionPerDay }: SumInput): string[] {
	const { means, waterL, value, analyte } = plan;
	const unit = unitName(value.unit, analyte);
	const first = days[0]?.amount ?? 0;
	if (means.by === 'product')
		return [
			`${figure(additionPerDay)} ÷ ${figure(means.risePerMlIn100L)} = ${figure(additionPerDay / means.risePerMlIn100L)} mL for 100 L`,
			`${figure(additionPerDay / means.risePerMlIn100L)} × ${figure(waterL)} ÷ 100 = ${figure(first)} mL a day`
		];
	if (means.by === 'waterChange') {
		const apart = means.newValue - value.value;
		return [
			`${figure(means.newValue)} − ${figure(value.value)} = ${figure(apart)} ${unit} between new water and tank`,
			`${figure(additionPerDay)} ÷ ${figure(apart)} = ${figure(additionPerDay / apart)} of the water`,
			`${figure(additionPerDay / apart)} × ${figure(waterL)} = ${figure(first)} L on the first day; a little more each day after, as the two come closer`
		];
	}
	const counted = countedIn(analyte);
	const word = counted.replace('/L', '');
	const perL = convertValue(additionPerDay, value.unit, counted, analyte);
	const whole = perL * waterL;
	const size = convertValue(1, value.unit, counted, analyte);
	const common = [
		...(size === 1
			? []
			: [`${figure(additionPerDay)} × ${figure(size)} = ${figure(perL)} ${word} in a litre`]),
		`${figure(perL)} × ${figure(waterL)} = ${figure(whole)} ${word} in all the water`
	];
	if (means.by === 'limewater')
		return [
			...common,
			`${figure(whole)} ÷ ${figure(MEQ_PER_L_OF_LIMEWATER)} = ${figure(first)} L a day, of which each litre holds ${figure(MEQ_PER_L_OF_LIMEWATER)} meq`,
			`${figure(perL)} × ${figure(CALCIUM_MG_PER_MEQ)} = ${figure(perL * CALCIUM_MG_PER_MEQ)} mg/L of calcium that comes with it each day`
		];
	return [...common, ...powderLines(plan, whole, amountFor(plan, additionPerDay, value.value))];
}

/** The sum, line by line, so that a pocket calculator comes to the same amounts. */
export function sumLines(input: SumInput): string[] {
	const { plan, days, daysInAll, netPerDay, additionPerDay, totalAmount } = input;
	const { value, target, consumptionPerDay, dosedPerDay, analyte } = plan;
	const unit = unitName(value.unit, analyte);
	const n = days.length;
	const amount = days[0]?.amount ?? 0;
	const { amountUnit } = meansFigures(plan.means);
	const isNet = consumptionPerDay > 0 || dosedPerDay > 0;
	const isSame = plan.means.by !== 'waterChange';
	return [
		`${figure(target)} − ${figure(value.value)} = ${figure(target - value.value)} ${unit} to go`,
		`${figure(target - value.value)} ÷ ${daysInAll} = ${figure(netPerDay)} ${unit} each day, on ${daysInAll === 1 ? '1 day' : `${daysInAll} days`}${daysInAll > n ? `, the first ${n === 1 ? 'one' : n} of them here` : ''}`,
		...(isNet
			? [
					`${figure(netPerDay)} + ${figure(consumptionPerDay)} − ${figure(dosedPerDay)} = ${figure(additionPerDay)} ${unit} to bring in each day: more what is used up, less what is dosed`
				]
			: []),
		...meansLines(input),
		...(isSame && n > 1
			? [`${n} × ${figure(amount)} = ${figure(totalAmount)} ${amountUnit} in all`]
			: []),
		`Measure out ${amountInWords(amount, amountUnit)}${isSame ? ' a day' : ' on the first day'}: no volume of a tank is known more closely.`
	];
}
