import type { Diagnosis, FaultGroup, Hump } from '$lib/judgement';
import { decimalsFor, unitName, type Analyte } from '$lib/kits';
import { plain } from '../charts/numbers';
import { capital, faultName, listed, type Catalogue } from './catalogue';
import type { ExplanationRow } from './explanation-rows';

const NONE_OF_THESE = 'noneOfThese';
/** A hump that holds less than this is not spoken of. */
const WORTH_SAYING = 0.05;

/**
 * Whether more than the likeliest explanation makes a hump, as far as its figures show: then it is not what the
 * water holds if that one is so.
 */
function isSharedHump(hump: Hump, diagnosis: Diagnosis): boolean {
	const own = diagnosis.explanations.find(({ id }) => id === hump.explanation);
	return !own || valueWords(diagnosis, own.trueValue) !== valueWords(diagnosis, hump);
}

/** Under which condition a value holds: 'with titrant grown stronger', 'if nothing is wrong'. */
function conditionOf(
	explanation: string,
	isShared: boolean,
	groups: readonly FaultGroup[],
	catalogue: Catalogue
): string {
	if (explanation === 'none')
		return isShared ? 'if nothing is wrong, or nothing that moves it far' : 'if nothing is wrong';
	if (explanation === NONE_OF_THESE) return 'if not';
	const ids = explanation.split('+');
	const faults = ids.filter((id) => id !== 'realChange');
	const names = listed(
		faults.map((id) => {
			const isOneOfSeveral =
				isShared || groups.some((group) => group.faults.length > 1 && group.faults.includes(id));
			return `“${faultName(catalogue, id)}”${isOneOfSeveral ? ', or something that comes to the same' : ''}`;
		})
	);
	if (faults.length === ids.length) return `if it is ${names}`;
	if (faults.length > 0) return `if the water has really changed, and it is ${names} besides`;
	return `if the water has really changed${isShared ? ', or something else comes to the same' : ''}`;
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
	if (humps.length === 0 || diagnosis.isTankUnread) {
		const { mean, interval95 } = diagnosis.trueValue;
		const half = (interval95[1] - interval95[0]) / 2;
		const decimals = decimalsFor(diagnosis.unit, half);
		const [low, high] = interval95.map((end) => plain(Math.max(0, end), decimals));
		if (diagnosis.isTankUnread)
			return `What was read tells nothing of the tank. Of any tank, before a test: most hold ${low} to ${high} ${unit}.`;
		return `The water holds about ${plain(mean, decimals)} ${unit}; it hardly lies outside ${low} to ${high}.`;
	}
	// What has no name is said last, as what holds if the others do not.
	humps.sort(
		(a, b) => Number(a.explanation === NONE_OF_THESE) - Number(b.explanation === NONE_OF_THESE)
	);
	const conditions = humps.map((hump) =>
		conditionOf(hump.explanation, isSharedHump(hump, diagnosis), diagnosis.groups, catalogue)
	);
	const parts = humps.map((hump, i) => {
		const condition = conditions[i] ?? '';
		const isSaid = conditions.indexOf(condition) < i;
		const value = `${valueWords(diagnosis, hump)}${i === 0 ? ` ${unit}` : ''}`;
		return `${value} ${isSaid ? 'if not' : condition}`;
	});
	return `${capital(parts.join('; '))}.`;
}

/** Members of a group that make up less of it than this are not spoken of. */
const WORTH_A_PLACE = 0.05;

/**
 * What the water holds if a row is so: 'If so, the water holds 5.4 ± 0.5 dKH.' Where a row stands for several
 * whose values lie apart, no one value with its ± is any of theirs.
 */
export function ifSoWords(
	diagnosis: Diagnosis,
	{ trueValue, explanations, probability }: ExplanationRow,
	analyte: Analyte = 'alkalinity'
): string {
	const unit = unitName(diagnosis.unit, analyte);
	const members = diagnosis.explanations.filter(
		(each) => explanations.includes(each.id) && each.probability >= WORTH_A_PLACE * probability
	);
	const means = members.map((each) => each.trueValue.mean);
	const widest = Math.max(...members.map((each) => each.trueValue.standardUncertainty));
	const [low, high] = [Math.min(...means), Math.max(...means)];
	if (members.length < 2 || high - low <= 2 * widest)
		return `If so, the water holds ${valueWords(diagnosis, trueValue)}\u00a0${unit}.`;
	const decimals = decimalsFor(diagnosis.unit, 2 * widest);
	return `If so, what the water holds depends on which it is: from about ${plain(low, decimals)} to ${plain(high, decimals)}\u00a0${unit}.`;
}
