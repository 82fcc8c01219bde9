import { decimalsFor, roundedAs, unitName, unitOf, type Analyte, type Unit } from '$lib/kits';
import type { Measured } from '$lib/judgement';
import { plain } from '../charts/numbers';

/** '12.03 g', with the digits that its scale or syringe can show. */
export function amountText({ amount, measure }: Measured): string {
	if (measure.by === 'line') return `${plain(amount, 0)}\u00a0mL`;
	if (measure.by === 'syringe') return `${plain(amount, measure.capacityMl > 2.5 ? 1 : 2)}\u00a0mL`;
	const decimals = Math.max(0, Math.ceil(-Math.log10(measure.scale.divisionG) - 1e-9));
	return `${plain(amount, decimals)}\u00a0g`;
}

/** '8.02' and '0.08' of a value and its ±, both with the digits that the ± allows. */
export function valueTexts(value: number, expandedUncertainty: number, unit: Unit) {
	const decimals = decimalsFor(unit, expandedUncertainty);
	const text = (each: number) => plain(roundedAs(each, expandedUncertainty), decimals);
	return { value: text(value), plusMinus: text(expandedUncertainty) };
}

/** '8.02 ± 0.08 dKH' */
export function valueText(
	value: number,
	expandedUncertainty: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): string {
	const texts = valueTexts(value, expandedUncertainty, unit);
	return `${texts.value}\u00a0±\u00a0${texts.plusMinus}\u00a0${unitName(unit, analyte)}`;
}

/** '7.7 to 7.9 dKH', or one value where both ends read the same, in the digits of a kit. */
export function readingRange(
	low: number,
	high: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): string {
	const { decimals, name } = unitOf(unit, analyte);
	const [from, to] = [plain(low, decimals), plain(high, decimals)];
	return `${from === to ? from : `${from} to ${to}`}\u00a0${name}`;
}

/** '0.9 %', '18 %': a share with two digits at most. */
export function percentText(share: number): string {
	const percent = 100 * Math.abs(share);
	return `${percent < 9.95 ? plain(percent, 1) : plain(percent, 0)}\u00a0%`;
}
