import type { Diagnosis, Explanation, FaultClass, FaultGroup } from '$lib/judgement';
import type { CheckId } from '$lib/observation';
import { capital, faultName, questionOf, type Catalogue } from './catalogue';

/** One account of what happened, or several that nothing so far can tell apart. */
export type ExplanationRow = {
	id: string;
	title: string;
	/** It stands for several that nothing so far can tell apart. */
	isGroup: boolean;
	/** Of a larger group: what else may be behind it, one by one. */
	members: readonly string[];
	/** Of a group: the check that would tell its members apart; null when none does, or for one alone. */
	splitBy: CheckId | null;
	/** The question, in its words, that goes before that check. */
	askFirst?: string;
	probability: number;
	/** What the water holds if it is so, in the diagnosis' unit. */
	trueValue: Explanation['trueValue'];
	/** Of one of its explanations; all share the sort of thing that is wrong. */
	faults: readonly string[];
	/** What would mend it, one for each fault that can be told; empty where it is unlikely or a group. */
	remedies: readonly string[];
	/** Ids of the explanations in it. */
	explanations: readonly string[];
	/** Of a group: how likely the account that its title names first is by itself, and its id. */
	leading?: { explanation: string; probability: number };
};

const NONE = 'none';
const NONE_OF_THESE = 'noneOfThese';

/** At most so many bars, 'none of these' among them. */
const MOST_BARS = 5;
/** What is less likely than this is folded with the rest. */
const WORTH_A_BAR = 0.02;

/** Several accounts as one: their values as a mixture. */
function merged(explanations: readonly Explanation[]): Explanation['trueValue'] {
	const total = explanations.reduce((sum, { probability }) => sum + probability, 0);
	const over = (of: (each: Explanation) => number) =>
		explanations.reduce((sum, each) => sum + each.probability * of(each), 0) / total;
	const mean = over(({ trueValue }) => trueValue.mean);
	const variance = over(
		({ trueValue }) => trueValue.standardUncertainty ** 2 + (trueValue.mean - mean) ** 2
	);
	return { mean, standardUncertainty: Math.sqrt(variance) };
}

/** Faults of one group count as one: what an account is, as far as it can be told from others. */
function partsOf(explanation: Explanation, groups: readonly FaultGroup[]): string[] {
	const parts = explanation.faults.map((fault) => {
		const group = groups.findIndex(({ faults }) => faults.includes(fault));
		return group < 0 ? fault : `group ${group}`;
	});
	return [...new Set(parts)].sort();
}

/**
 * What could explain the reading, the most probable first: accounts that nothing so far can tell
 * apart are one row. With 'none of these', which stands last, the rows' probabilities sum to 1.
 */
export function explanationRows(diagnosis: Diagnosis, catalogue: Catalogue): ExplanationRow[] {
	const groups = diagnosis.groups.filter(({ faults }) => faults.length > 1);
	const byParts = new Map<string, Explanation[]>();
	for (const explanation of diagnosis.explanations) {
		if (explanation.id === NONE_OF_THESE) continue;
		const key = explanation.id === NONE ? NONE : partsOf(explanation, groups).join('+');
		byParts.set(key, [...(byParts.get(key) ?? []), explanation]);
	}
	const groupOf = (part: string) => groups[Number(/^group (\d+)$/.exec(part)?.[1])];
	/** Of a group, the most probable first. */
	const sorted = ({ faults }: FaultGroup) =>
		[...faults].sort((a, b) => (diagnosis.faults[b] ?? 0) - (diagnosis.faults[a] ?? 0));
	const namesOf = (group: FaultGroup) => sorted(group).map((fault) => faultName(catalogue, fault));
	const nameOf = (part: string) => {
		const group = groupOf(part);
		if (!group) return faultName(catalogue, part);
		const [first = '', second = ''] = namesOf(group);
		const others = group.faults.length - 1;
		return others === 1 ? `${first}; or ${second}` : `${first}; or one of ${others} others`;
	};
	const rows = [...byParts].map(([key, explanations]): ExplanationRow => {
		const parts = key.split('+');
		const group = parts.map(groupOf).find((each) => each !== undefined);
		// A real change is said first: the water matters more than what else is wrong.
		const names = [...parts].sort(
			(a, b) => Number(b === 'realChange') - Number(a === 'realChange')
		);
		return {
			id: key,
			title:
				key === NONE
					? 'No fault, only the usual spread'
					: capital(names.map((part) => nameOf(part)).join('; and ')),
			isGroup: group !== undefined,
			members: group && group.faults.length > 2 ? namesOf(group).slice(1) : [],
			splitBy: group?.splitBy ?? null,
			...(group?.askFirst ? { askFirst: questionOf(catalogue, group.askFirst) } : {}),
			probability: explanations.reduce((sum, { probability }) => sum + probability, 0),
			trueValue: merged(explanations),
			faults: explanations[0]?.faults ?? [],
			remedies: [],
			explanations: explanations.map(({ id }) => id),
			...(group ? leadingOf(explanations, sorted(group)[0]) : {})
		};
	});
	for (const row of rows) row.remedies = remediesOf(row, catalogue);
	rows.sort((a, b) => b.probability - a.probability || (a.id < b.id ? -1 : 1));
	return [...rows, noneOfThese(diagnosis)];
}

function leadingOf(
	explanations: readonly Explanation[],
	fault: string | undefined
): Pick<ExplanationRow, 'leading'> {
	const found = explanations.find(({ faults }) => fault !== undefined && faults.includes(fault));
	return found ? { leading: { explanation: found.id, probability: found.probability } } : {};
}

/** What is less likely than this is not mended yet: a check would tell first. Judgement. */
const WORTH_MENDING = 0.3;

function remediesOf(
	{ isGroup, probability, faults }: ExplanationRow,
	catalogue: Catalogue
): readonly string[] {
	if (isGroup || probability < WORTH_MENDING) return [];
	return faults.flatMap((id) => catalogue.faults.find((fault) => fault.id === id)?.remedy ?? []);
}

function noneOfThese(diagnosis: Diagnosis): ExplanationRow {
	const own = diagnosis.explanations.find(({ id }) => id === NONE_OF_THESE);
	return {
		id: NONE_OF_THESE,
		title: 'None of these',
		isGroup: false,
		members: [],
		splitBy: null,
		probability: diagnosis.noneOfThese,
		trueValue: own?.trueValue ?? {
			mean: diagnosis.trueValue.mean,
			standardUncertainty: diagnosis.trueValue.standardDeviation
		},
		faults: [],
		remedies: [],
		explanations: [NONE_OF_THESE]
	};
}

/** The rows that get a bar, the last of them 'none of these', and those that are folded away. */
export function barsAndRest(rows: readonly ExplanationRow[]): {
	bars: ExplanationRow[];
	rest: ExplanationRow[];
} {
	const last = rows.filter(({ id }) => id === NONE_OF_THESE);
	const others = rows.filter(({ id }) => id !== NONE_OF_THESE);
	const most = MOST_BARS - last.length;
	const bars = others.filter((row, i) => i < most && (i === 0 || row.probability >= WORTH_A_BAR));
	return { bars: [...bars, ...last], rest: others.slice(bars.length) };
}

/** Accounts that have no bar of their own, gathered by where to look for the cause. */
export type RestRow = { id: string; title: string; probability: number; names: readonly string[] };

const classTitles: Record<FaultClass, string> = {
	technique: 'Something else in how it was tested',
	reagent: 'Something else about the bottles',
	ware: 'Something else about syringe, dropper or vial',
	method: 'Something else about the kit',
	secondMethod: 'The second method',
	reference: 'The known solution',
	sampling: 'The water in the vial was not the tank’s',
	water: 'The water itself'
};

function placeOf(row: ExplanationRow, { faults }: Catalogue): { id: string; title: string } {
	const parts = row.id.split('+');
	if (parts.length > 1) return { id: 'two', title: 'Two things at once' };
	const first = row.faults[0] ?? '';
	if (first === 'realChange') return { id: 'water', title: classTitles.water };
	const found = faults.find(({ id }) => id === first)?.class;
	return found ? { id: found, title: classTitles[found] } : { id: row.id, title: row.title };
}

/** The folded rows, gathered; the most probable first. */
export function gathered(rest: readonly ExplanationRow[], catalogue: Catalogue): RestRow[] {
	const byPlace = new Map<string, RestRow>();
	for (const row of rest) {
		const { id, title } = placeOf(row, catalogue);
		const before = byPlace.get(id);
		byPlace.set(id, {
			id,
			title,
			probability: (before?.probability ?? 0) + row.probability,
			// Of two at once the likeliest pair is enough: there are hundreds.
			names: id === 'two' && before ? before.names : [...(before?.names ?? []), row.title]
		});
	}
	return [...byPlace.values()].sort((a, b) => b.probability - a.probability);
}
