import { hydratesOf, meansFor } from '$lib/judgement';
import {
	numberText,
	plausibleRange,
	typedNumber,
	unitName,
	type Analyte,
	type TypedRange,
	type Unit
} from '$lib/kits';
import type { Means } from '$lib/observation';
import { plain } from '../charts/numbers';
import { listed } from '../conversation/catalogue';

type By = Means['by'];
export type Hydrate = Extract<Means, { hydrate: string }>['hydrate'];

export const byWords: Record<By, string> = {
	bicarbonate: 'Sodium bicarbonate',
	carbonate: 'Sodium carbonate',
	limewater: 'Limewater',
	calciumChloride: 'Calcium chloride',
	magnesiumChloride: 'Magnesium chloride',
	magnesiumSulfate: 'Magnesium sulfate',
	product: 'A product, by its label',
	waterChange: 'A water change'
};
/** What can be chosen: nothing is added to bring it down, so that only new water is left. */
export function offeredWords(analyte: Analyte, isLowering: boolean): Readonly<Record<By, string>> {
	const offered = isLowering ? (['waterChange'] as const) : meansFor(analyte);
	return Object.fromEntries(offered.map((by) => [by, byWords[by]])) as Record<By, string>;
}

/** Means as they are being written. */
export type MeansDraft = {
	by: By | '';
	hydrate: Hydrate | '';
	purityPercent: string;
	risePerMlIn100L: string;
	newValue: string;
	sharePercent: string;
};
export type MeansBlank = 'purityPercent' | 'risePerMlIn100L' | 'newValue' | 'sharePercent';

/** A blank of the means that were chosen. */
export type MeansField = {
	name: MeansBlank;
	label: string;
	unit: string;
	hint?: string;
	what: string;
	range: TypedRange;
};

const purity: MeansField = {
	name: 'purityPercent',
	label: 'Purity',
	unit: '%',
	hint: 'On its label; 100 where the label says nothing else.',
	what: 'the purity',
	range: { low: 1, high: 100, why: 'Purity lies between 1 and 100 %' }
};

/** What must be known of the means that were chosen. */
export function meansFields(by: By | '', unit: Unit, analyte: Analyte): MeansField[] {
	const name = unitName(unit, analyte);
	const high = plausibleRange(unit, analyte).high * 2;
	switch (by) {
		case 'bicarbonate':
		case 'carbonate':
		case 'calciumChloride':
		case 'magnesiumChloride':
		case 'magnesiumSulfate':
			return [purity];
		case 'product':
			return [
				{
					name: 'risePerMlIn100L',
					label: '1 mL raises 100 L by',
					unit: name,
					hint: 'Its label must say it. Without it nothing is worked out.',
					what: 'what the label promises of 1 mL in 100 L',
					range: {
						low: high / 1e5,
						high,
						why: `In ${name} that is more than 0 and up to ${plain(high, 0)}`
					}
				}
			];
		case 'waterChange':
			return [
				{
					name: 'newValue',
					label: 'The new water holds',
					unit: name,
					hint: 'Tested, when it is clear.',
					what: 'what the new water holds',
					range: { low: 0, high, why: `Water holds from 0 to ${plain(high, 0)} ${name}` }
				},
				{
					name: 'sharePercent',
					label: 'Changed in a day, at most',
					unit: '% of the water',
					what: 'the share',
					range: { low: 1, high: 100, why: 'A share lies between 1 and 100 %' }
				}
			];
		case 'limewater':
		case '':
			return [];
	}
}

export function draftOfMeans(means: Means | null): MeansDraft {
	const percent = (share: number) => numberText(Number((share * 100).toPrecision(12)));
	return {
		by: means?.by ?? '',
		hydrate: means && 'hydrate' in means ? means.hydrate : '',
		purityPercent: means && 'purity' in means ? percent(means.purity) : '',
		risePerMlIn100L: means?.by === 'product' ? numberText(means.risePerMlIn100L) : '',
		newValue: means?.by === 'waterChange' ? numberText(means.newValue) : '',
		sharePercent: means?.by === 'waterChange' ? percent(means.share) : ''
	};
}

/** The means as written, or what is wrong at which blank; null for means while anything lacks. */
export function readMeans(
	draft: MeansDraft,
	unit: Unit,
	analyte: Analyte
): { means: Means | null; problems: Partial<Record<MeansBlank | 'hydrate', string>> } {
	const problems: Partial<Record<MeansBlank | 'hydrate', string>> = {};
	const values: Partial<Record<MeansBlank, number>> = {};
	for (const { name, what, range } of meansFields(draft.by, unit, analyte)) {
		const typed = typedNumber(draft[name], what, range);
		if ('value' in typed) values[name] = typed.value;
		else problems[name] = typed.problem;
	}
	const { purityPercent, risePerMlIn100L, newValue, sharePercent } = values;
	switch (draft.by) {
		case 'bicarbonate':
			if (purityPercent === undefined) break;
			return { means: { by: 'bicarbonate', purity: purityPercent / 100 }, problems };
		case 'carbonate':
		case 'calciumChloride':
		case 'magnesiumChloride':
		case 'magnesiumSulfate': {
			const isKnown = draft.hydrate in hydratesOf(draft.by);
			if (!isKnown) problems.hydrate = 'Say which: their strengths differ by far.';
			if (!isKnown || purityPercent === undefined) break;
			const { by, hydrate } = draft;
			return { means: { by, hydrate, purity: purityPercent / 100 } as Means, problems };
		}
		case 'limewater':
			return { means: { by: 'limewater' }, problems };
		case 'product':
			if (risePerMlIn100L === undefined) break;
			return { means: { by: 'product', risePerMlIn100L }, problems };
		case 'waterChange':
			if (newValue === undefined || sharePercent === undefined) break;
			return { means: { by: 'waterChange', newValue, share: sharePercent / 100 }, problems };
		case '':
			break;
	}
	return { means: null, problems };
}

const lacking: Record<MeansBlank | 'hydrate', string> = {
	hydrate: 'how much water is in its crystals',
	purityPercent: 'its purity',
	risePerMlIn100L: 'what 1 mL raises 100 L by',
	newValue: 'what the new water holds',
	sharePercent: 'how much of the water is changed in a day'
};

/** What is still to be said of the means that were chosen; null before that, and where nothing is. */
export function lackingWords(draft: MeansDraft, unit: Unit, analyte: Analyte): string | null {
	const { means, problems } = readMeans(draft, unit, analyte);
	if (draft.by === '' || means !== null) return null;
	const lacks = (Object.keys(lacking) as (keyof typeof lacking)[]).filter(
		(name) => problems[name] !== undefined
	);
	return `Of ‘${byWords[draft.by]}’ this is still to be said: ${listed(lacks.map((name) => lacking[name]))}.`;
}
