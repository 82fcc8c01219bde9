import { analyteName, unitName, type Delivery, type Kit } from '$lib/kits';

/** A number as it stands in a sentence: no more decimals than it needs. */
export const short = (value: number, digits = 3): string =>
	String(Number(value.toPrecision(digits))).replace('-', '−');

/** A worth with two figures that count, as '0.30' or '12'. */
export function worthText(value: number): string {
	const decimals = Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value))));
	return value === 0 ? '0' : value.toFixed(Math.min(6, decimals)).replace('-', '−');
}

/** How the titrant is given, for a list: 'from a 1 mL syringe'. */
export function deliveryWords(delivery: Delivery): string {
	if (delivery.by === 'dropper') return 'from a dropper bottle';
	if (delivery.by === 'burette') return `from a ${short(delivery.capacityMl)} mL burette`;
	return `from a ${short(delivery.capacityMl)} mL syringe`;
}

/** What a kit measures and how, on one line. */
export const kitLine = (kit: Kit): string =>
	`${analyteName(kit.analyte)}, ${unitName(kit.unit, kit.analyte)}, ${deliveryWords(kit.delivery)}`;

const dateWords = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	year: 'numeric'
});

/** A day in words, in the reader's own time zone. */
export const dayWords = (atEpochMs: number): string => dateWords.format(new Date(atEpochMs));

const DAY_MS = 86_400_000;

/** An age in the coarsest words that still tell: '12 days', '5 weeks', '8 months'. */
export function ageWords(fromEpochMs: number, toEpochMs: number): string {
	const days = Math.max(0, Math.floor((toEpochMs - fromEpochMs) / DAY_MS));
	if (days === 0) return 'today';
	if (days === 1) return '1 day';
	if (days < 21) return `${days} days`;
	if (days < 90) return `${Math.round(days / 7)} weeks`;
	if (days < 730) return `${Math.round(days / 30.44)} months`;
	return `${Math.round(days / 365.25)} years`;
}
