import type { Analyte } from '$lib/kits';
import type { Circumstances } from '$lib/observation';
import { plain } from '../../charts/numbers';
import { solutionWords } from './known-solution';

/** Names of choices, in the order in which they are offered. */
export const waterNames = {
	tank: 'tank',
	topOff: 'top-off',
	newMix: 'new salt water',
	reference: 'known solution',
	other: 'other'
} satisfies Record<NonNullable<Circumstances['water']>, string>;

export const runsNames = { yes: 'yes', no: 'no', unsure: 'not sure' } satisfies Record<
	NonNullable<Circumstances['dosingRuns']>,
	string
>;

export const lightNames = { white: 'white', blue: 'blue', dim: 'dim' } satisfies Record<
	NonNullable<Circumstances['light']>,
	string
>;

export const salinityUnitNames = {
	PSU: 'PSU',
	'g/kg': 'g/kg',
	'mS/cm': 'mS/cm',
	specificGravity: 'specific gravity'
} satisfies Record<NonNullable<Circumstances['salinity']>['unit'], string>;

const dayAndTime = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	hour: '2-digit',
	minute: '2-digit'
});
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const joined = (parts: readonly (string | undefined | false)[]) =>
	parts.filter((part): part is string => typeof part === 'string').join(', ');
const shortest = (value: number) => String(Number(value.toFixed(4)));

/** The folds of the sheet, each with what has been said in it; empty when nothing has. */
export const saidOf = {
	water: (said: Circumstances, analyte: Analyte = 'alkalinity'): string =>
		joined([
			said.water && waterNames[said.water],
			said.reference && solutionWords(said.reference, analyte),
			said.takenWhere,
			said.takenAtEpochMs !== undefined && dayAndTime.format(said.takenAtEpochMs)
		]),
	dosing: (said: Circumstances): string =>
		joined([
			said.dosed,
			said.dosingRuns &&
				{ yes: 'running', no: 'not running', unsure: 'not sure it runs' }[said.dosingRuns],
			said.hoursSinceDose !== undefined && `dosed ${shortest(said.hoursSinceDose)} h ago`,
			said.hoursSinceLightsOn !== undefined &&
				`lights on ${shortest(said.hoursSinceLightsOn)} h ago`
		]),
	hands: (said: Circumstances): string =>
		joined([
			said.tester,
			said.light && `${lightNames[said.light]} light`,
			said.whiteCard && 'white card'
		]),
	salinity: (said: Circumstances): string =>
		joined([
			said.temperatureC !== undefined && `${plain(said.temperatureC)} °C`,
			said.salinity && salinityWords(said.salinity),
			said.temperatureBy,
			said.salinityBy !== said.temperatureBy && said.salinityBy
		]),
	bottle: (said: Circumstances): string =>
		joined([
			said.lot,
			said.lotOpenedAtEpochMs !== undefined && `opened ${day.format(said.lotOpenedAtEpochMs)}`
		])
};

/** A salinity as its instrument showed it: 'specific gravity 1.0264 (25/25 °C)'. */
export function salinityWords({
	value,
	unit,
	sampleC,
	referenceC
}: NonNullable<Circumstances['salinity']>): string {
	if (unit !== 'specificGravity') return `${shortest(value)} ${unit}`;
	const degrees = [sampleC, referenceC].map((each) => (each === undefined ? '?' : shortest(each)));
	const isKnown = sampleC !== undefined || referenceC !== undefined;
	return `specific gravity ${shortest(value)}${isKnown ? ` (${degrees.join('/')} °C)` : ''}`;
}

/** What should be heard before the first drop; empty when there is nothing to warn of. */
export function warningsOf(said: Circumstances): { id: 'light' | 'dose'; text: string }[] {
	const warnings: { id: 'light' | 'dose'; text: string }[] = [];
	if (said.light === 'blue' || said.light === 'dim')
		warnings.push({
			id: 'light',
			text: `Under ${said.light === 'blue' ? 'blue' : 'a dim'} light the colour change is easily missed. Take a white lamp.`
		});
	if (said.hoursSinceDose !== undefined && said.hoursSinceDose < 1)
		warnings.push({
			id: 'dose',
			text: 'Dosed less than an hour ago: the tank may not be mixed yet. Later tells more.'
		});
	return warnings;
}
