import type { Circumstances } from '$lib/observation';
import { typedNumber, type Typed } from '$lib/kits';
import { knownSolutionOf, solutionDraftOf, type SolutionDraft } from './known-solution';

/** What stands in the fields, as typed. Empty is not said. */
export type Draft = {
	water: Circumstances['water'] | '';
	takenWhere: string;
	/** As a field for date and time gives it, in local time. */
	takenAt: string;
	hoursSinceDose: string;
	hoursSinceLightsOn: string;
	dosed: string;
	dosingRuns: Circumstances['dosingRuns'] | '';
	tester: string;
	light: Circumstances['light'] | '';
	whiteCard: boolean;
	temperature: string;
	temperatureBy: string;
	salinity: string;
	salinityUnit: SalinityUnit | '';
	sampleC: string;
	referenceC: string;
	salinityBy: string;
	lot: string;
	/** As a field for a date gives it. */
	lotOpened: string;
} & SolutionDraft;
export type DraftField = keyof Draft;
export type SalinityUnit = NonNullable<Circumstances['salinity']>['unit'];
export type Problems = Partial<Record<DraftField, string>>;

const two = (n: number) => String(n).padStart(2, '0');

/** A time as a field for date and time takes it, in local time. */
export function localDateTime(epochMs: number): string {
	const at = new Date(epochMs);
	return `${localDate(epochMs)}T${two(at.getHours())}:${two(at.getMinutes())}`;
}
export function localDate(epochMs: number): string {
	const at = new Date(epochMs);
	return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

const typedAs = (value: number | undefined) => (value === undefined ? '' : String(value));

/** Fields as they stand when this much has been said. */
export function draftOf(said: Circumstances): Draft {
	return {
		water: said.water ?? '',
		takenWhere: said.takenWhere ?? '',
		takenAt: said.takenAtEpochMs === undefined ? '' : localDateTime(said.takenAtEpochMs),
		hoursSinceDose: typedAs(said.hoursSinceDose),
		hoursSinceLightsOn: typedAs(said.hoursSinceLightsOn),
		dosed: said.dosed ?? '',
		dosingRuns: said.dosingRuns ?? '',
		tester: said.tester ?? '',
		light: said.light ?? '',
		whiteCard: said.whiteCard ?? false,
		temperature: typedAs(said.temperatureC),
		temperatureBy: said.temperatureBy ?? '',
		salinity: typedAs(said.salinity?.value),
		salinityUnit: said.salinity?.unit ?? '',
		sampleC: typedAs(said.salinity?.sampleC),
		referenceC: typedAs(said.salinity?.referenceC),
		salinityBy: said.salinityBy ?? '',
		lot: said.lot ?? '',
		lotOpened: said.lotOpenedAtEpochMs === undefined ? '' : localDate(said.lotOpenedAtEpochMs),
		...solutionDraftOf(said.reference)
	};
}

/** What stays from one test to the next fills the fields that are still empty; readings never do. */
export function withRemembered(draft: Draft, remembered: Circumstances): Draft {
	const last = draftOf(remembered);
	const lasting = [
		'tester',
		'takenWhere',
		'dosed',
		'temperatureBy',
		'salinityUnit',
		'sampleC',
		'referenceC',
		'salinityBy'
	] as const;
	const next = { ...draft };
	for (const field of lasting) {
		if (next[field] === '') Object.assign(next, { [field]: last[field] });
	}
	// The date belongs to its bottle.
	if (next.lot === '' && next.lotOpened === '') {
		next.lot = last.lot;
		next.lotOpened = last.lotOpened;
	}
	return next;
}

/** What each instrument can show at all: from pure water to a brine that no animal lives in. */
const salinityRanges: Record<SalinityUnit, { low: number; high: number; why: string }> = {
	PSU: { low: 0, high: 60, why: 'A salinity in PSU lies between 0 and 60' },
	'g/kg': { low: 0, high: 60, why: 'A salinity in g/kg lies between 0 and 60' },
	'mS/cm': { low: 0, high: 90, why: 'A conductivity lies between 0 and 90 mS/cm' },
	specificGravity: {
		low: 0.99,
		high: 1.05,
		why: 'A specific gravity lies between 0.99 and 1.05'
	}
};
const temperatureRange = { low: 0, high: 45, why: 'The water is between 0 and 45 °C' };
const hoursRange = { low: 0, high: 10_000, why: 'Hours go from 0 to 10 000' };

function temperatureOf(text: string): Typed {
	const typed = typedNumber(text, 'the temperature', temperatureRange);
	if (!('problem' in typed)) return typed;
	const asTyped = typedNumber(text, '', { low: 45, high: 113, why: '' });
	if ('problem' in asTyped) return typed;
	const fromFahrenheit = ((asTyped.value - 32) / 1.8).toFixed(1);
	return { problem: `${typed.problem} If those are °F, they make ${fromFahrenheit} °C.` };
}

/** A specific gravity is often spoken of by its last figures: 1025 for 1.025. */
function salinityOf(text: string, unit: SalinityUnit): Typed {
	const typed = typedNumber(text, 'the salinity', salinityRanges[unit]);
	if (!('problem' in typed) || unit !== 'specificGravity') return typed;
	const asTyped = typedNumber(text, '', { low: 990, high: 1050, why: '' });
	if ('problem' in asTyped) return typed;
	return { problem: `${typed.problem} Do you mean ${(asTyped.value / 1000).toFixed(3)}?` };
}

/**
 * What the fields say: everything that can stand, and what is wrong at which of the others. Nothing
 * is thrown away here: what was typed stays in its field.
 *
 * @param now ms since 1970; water cannot have been taken later
 */
export function circumstancesOf(
	draft: Draft,
	now: number
): { circumstances: Circumstances; problems: Problems } {
	const problems: Problems = {};
	const number = (field: DraftField, read: (text: string) => Typed): number | undefined => {
		const text = String(draft[field]);
		if (text.trim() === '') return undefined;
		const typed = read(text);
		if ('value' in typed) return typed.value;
		problems[field] = typed.problem;
		return undefined;
	};
	const words = (text: string) => (text.trim() === '' ? undefined : text.trim().slice(0, 200));
	const time = (field: 'takenAt' | 'lotOpened', latest: number): number | undefined => {
		if (draft[field] === '') return undefined;
		const at = new Date(field === 'lotOpened' ? `${draft[field]}T00:00` : draft[field]).getTime();
		if (!Number.isFinite(at) || at < 0)
			problems[field] = `“${draft[field]}” is no date that can stand here.`;
		else if (at > latest) problems[field] = 'That is still to come.';
		else return at;
		return undefined;
	};
	const hours = (what: string) => (text: string) => typedNumber(text, what, hoursRange);

	let salinity: Circumstances['salinity'];
	if (draft.salinity.trim() !== '') {
		const unit = draft.salinityUnit;
		if (unit === '') problems.salinityUnit = 'Which unit does the instrument show?';
		else {
			const value = number('salinity', (text) => salinityOf(text, unit));
			const isGravity = unit === 'specificGravity';
			const sampleC = isGravity ? number('sampleC', temperatureOf) : undefined;
			const referenceC = isGravity ? number('referenceC', temperatureOf) : undefined;
			if (value !== undefined) salinity = { value, unit, sampleC, referenceC };
		}
	}
	// What was typed of a solution stays in its fields, and is not said of another water.
	const solution = draft.water === 'reference' ? knownSolutionOf(draft) : null;
	Object.assign(problems, solution?.problems);
	const circumstances: Circumstances = {
		water: draft.water || undefined,
		reference: solution?.reference,
		takenWhere: words(draft.takenWhere),
		// A minute's grace: the field knows no seconds.
		takenAtEpochMs: time('takenAt', now + 60_000),
		hoursSinceDose: number('hoursSinceDose', hours('the hours since the last dose')),
		hoursSinceLightsOn: number('hoursSinceLightsOn', hours('the hours since the lights went on')),
		dosed: words(draft.dosed),
		dosingRuns: draft.dosingRuns || undefined,
		tester: words(draft.tester),
		light: draft.light || undefined,
		whiteCard: draft.whiteCard || undefined,
		temperatureC: number('temperature', temperatureOf),
		temperatureBy: words(draft.temperatureBy),
		salinity: salinity && withoutGaps(salinity),
		salinityBy: words(draft.salinityBy),
		lot: words(draft.lot),
		lotOpenedAtEpochMs: time('lotOpened', now)
	};
	return { circumstances: withoutGaps(circumstances), problems };
}

function withoutGaps<T extends object>(given: T): T {
	const said = Object.entries(given).filter(([, value]) => value !== undefined);
	return Object.fromEntries(said) as T;
}
