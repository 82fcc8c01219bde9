import type { Diagnosis, FaultGroup, Hump } from '$lib/judgement';
import { decimalsFor, unitName, type Analyte } from '$lib/kits';
import { plain } from '../charts/numbers';
import { capital, faultName, listed, type Catalogue } from './catalogue';

const NONE_OF_THESE = 'noneOfThese';
/** A hump that holds less than this is not spoken of. */
const WORTH_SAYING = 0.05;

/** Under which condition a value holds: 'with titrant grown stronger', 'if nothing is wrong'. */
function conditionOf(
	explanation: string,
	groups: readonly FaultGroup[],
	catalogue: Catalogue
): string {
	if (explanation === 'none') return 'if nothing is wrong';
	if (explanation === NONE_OF_THESE) return 'if not';
	const ids = explanation.split('+');
	const faults = ids.filter((id) => id !== 'realChange');
	const names = listed(
		faults.map((id) => {
			const isOneOfSeveral = groups.some(
				(group) => group.faults.length > 1 && group.faults.includes(id)
			);
			return `“${faultName(catalogue, id)}”${isOneOfSeveral ? ', or what looks like it' : ''}`;
		})
	);
	if (faults.length === ids.length) return `if it is ${names}`;
	return `if the water has really changed${faults.length > 0 ? `, and it is ${names} besides` : ''}`;
}

/** '8.0 ± 0.3', with as many decimals as the ± allows; it stays on one line. */
export function valueWords(
	diagnosis: Pick<Diagnosis, 'unit'>,
	{ mean, standardUncertainty }: { mean: number; standardUncertainty: number }
): string {
	const expanded = 2 * standardUncertainty;
	const decimals = decimalsFor(diagnosis.unit, expanded);
	return `${plain(mean, decimals)}\u00a0±\u00a0${plain(expanded, decimals)}`;
}

/** The humps that are spoken of; one when the values do not lie apart. */
export function saidHumps(diagnosis: Diagnosis): readonly Hump[] {
	const humps = diagnosis.trueValue.humps.filter(({ weight }) => weight >= WORTH_SAYING);
	return humps.length > 1 ? humps.slice(0, 3) : [];
}

/** What the water holds, in one or two sentences, with its ±; split where the values lie apart. */
export function trueValueSentence(
	diagnosis: Diagnosis,
	catalogue: Catalogue,
	analyte: Analyte = 'alkalinity'
): string {
	const unit = unitName(diagnosis.unit, analyte);
	const humps = [...saidHumps(diagnosis)];
	if (humps.length === 0) {
		const { mean, interval95 } = diagnosis.trueValue;
		const half = (interval95[1] - interval95[0]) / 2;
		const decimals = decimalsFor(diagnosis.unit, half);
		const [low, high] = interval95.map((end) => plain(Math.max(0, end), decimals));
		return `The water holds about ${plain(mean, decimals)} ${unit}; it hardly lies outside ${low} to ${high}.`;
	}
	// What has no name is said last, as what holds if the others do not.
	humps.sort(
		(a, b) => Number(a.explanation === NONE_OF_THESE) - Number(b.explanation === NONE_OF_THESE)
	);
	const conditions = humps.map(({ explanation }) =>
		conditionOf(explanation, diagnosis.groups, catalogue)
	);
	const parts = humps.map((hump, i) => {
		const condition = conditions[i] ?? '';
		const isSaid = conditions.indexOf(condition) < i;
		const value = `${valueWords(diagnosis, hump)}${i === 0 ? ` ${unit}` : ''}`;
		return `${value} ${isSaid ? 'if not' : condition}`;
	});
	return `${capital(parts.join('; '))}.`;
}
