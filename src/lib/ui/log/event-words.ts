import type { Analyte, Kit } from '$lib/kits';
import type { Circumstances, Marks, TestEvent, WalkEvent, WalkEventType } from '$lib/observation';
import { plain } from '../charts/numbers';
import { lightNames, runsNames, salinityWords, waterNames } from '../test/before/before-words';
import { solutionWords } from '../test/before/known-solution';
import { takenOffWords } from '../test/result/difference/taken-off';
import { dateWords, momentWords } from './log-words';

/** Words for what was done and said beside the tank, in the past tense. */

const ml = (volume: number) => `${plain(volume, 2)} mL`;
const list = (parts: readonly (string | null | undefined | false)[]) =>
	parts.filter((part): part is string => typeof part === 'string' && part !== '').join(', ');

/** Marks as they were read: 'seal 0.42, liquid line 0.25'. */
export function marksWords({ sealMl, lineMl, levelMl, drops }: Marks): string {
	return (
		list([
			sealMl !== undefined && `seal ${plain(sealMl, 2)}`,
			lineMl !== undefined && `liquid line ${plain(lineMl, 2)}`,
			levelMl !== undefined && `level ${plain(levelMl, 2)}`,
			drops !== undefined && dropWords(drops)
		]) || 'no mark'
	);
}
const dropWords = (drops: number) => `${plain(drops, 0)} ${drops === 1 ? 'drop' : 'drops'}`;

type Sayers = {
	[Type in WalkEventType]: (event: Extract<WalkEvent, { type: Type }>, kit: Kit) => string;
};
const waters = { sample: 'tank water', purified: 'purified water', tap: 'tap water' };

const sayers: Sayers = {
	'sample.chosen': ({ volumeId }, { sample }) =>
		`Sample chosen: ${sample.volumes.find(({ id }) => id === volumeId)?.name ?? volumeId}`,
	'vial.rinsed': (event) =>
		`${event.ware === 'sampler' ? 'Sample syringe' : 'Vial'} rinsed${event.with ? ` with ${waters[event.with]}` : ''}`,
	'sample.measured': ({ volumeMl }) =>
		`Water measured${volumeMl === undefined ? '' : `: ${ml(volumeMl)}`}`,
	'reagent.added': ({ reagentId, amount }, { reagents }) => {
		const reagent = reagents.find(({ id }) => id === reagentId);
		const much =
			amount === undefined
				? ''
				: reagent?.dose.unit === 'drop'
					? `, ${dropWords(amount)}`
					: `, ${plain(amount, 1).replace(/\.0$/, '')} ${reagent?.dose.unit ?? ''}`;
		return `${reagent?.name ?? reagentId} added${much}`;
	},
	'vial.swirled': ({ seconds }) =>
		`Swirled${seconds === undefined ? '' : ` for ${plain(seconds, 0)} s`}`,
	'wait.over': () => 'Waited',
	'tip.fitted': () => 'Tip fitted',
	'tip.wiped': () => 'Tip wiped',
	'titrant.drawn': ({ sealMl, lineMl, levelMl, before, drawnAgainMl, tip }) => {
		const now = marksWords({ sealMl, lineMl, levelMl });
		const later = list([
			tip === 'off' && 'without its tip',
			tip === 'loose' && 'tip loose',
			before && `before it ${marksWords(before)}`,
			drawnAgainMl !== undefined && `${ml(drawnAgainMl)} drawn in again`
		]);
		return `${before || drawnAgainMl !== undefined ? 'Refilled' : 'Filled'}: ${now}${later ? `; ${later}` : ''}`;
	},
	'filling.done': () => 'Said: filled',
	'titrant.fell': ({ drops, volumeMl }) =>
		drops !== undefined
			? `Fell: ${dropWords(drops)}`
			: volumeMl !== undefined
				? `Fell: ${ml(volumeMl)}`
				: 'Drops fell, not counted',
	'drop.touchedOff': () => 'Part of a drop touched off on the glass',
	'lamp.changed': ({ lamp }) => `Light changed: ${lamp}`,
	'colour.turned': () => 'Said: a flash of the new colour',
	'colour.faded': () => 'Said: it faded',
	'colour.stayed': ({ secondsSinceDrop }) =>
		`Said: it stays${secondsSinceDrop === undefined ? '' : `, ${plain(secondsSinceDrop, 0)} s after the last drop`}`,
	'titrant.spent': () => 'Said: the titrant is used up',
	'marks.read': ({ marks }) => `Read: ${marksWords(marks)}`,
	'value.reported': ({ value, unit }) => `Said: ${value} ${unit}`,
	'step.skipped': () => 'Step left out',
	'step.done': () => 'Step done',
	'walk.abandoned': () => 'Titration given up'
};

function walkWords(event: WalkEvent, kit: Kit): string {
	const say = sayers[event.type] as (event: WalkEvent, kit: Kit) => string;
	return say(event, kit);
}

/** What was said before the number, as lines of name and words; empty when nothing was. */
export function circumstanceLines(
	said: Circumstances,
	analyte: Analyte = 'alkalinity'
): { name: string; words: string }[] {
	const hours = (ago: number | undefined) =>
		ago === undefined ? null : `${Number(ago.toFixed(2))} h before`;
	const lines: [string, string | null | undefined][] = [
		['Water', said.water && waterNames[said.water]],
		['It holds', said.reference && solutionWords(said.reference, analyte)],
		[
			'Taken',
			list([said.takenAtEpochMs !== undefined && momentWords(said.takenAtEpochMs), said.takenWhere])
		],
		['Dosed', said.dosed],
		['Dosing runs', said.dosingRuns && runsNames[said.dosingRuns]],
		['Last dose', hours(said.hoursSinceDose)],
		['Lights on', hours(said.hoursSinceLightsOn)],
		['Tested by', said.tester],
		['Light', list([said.light && lightNames[said.light], said.whiteCard && 'white card'])],
		[
			'Temperature',
			list([
				said.temperatureC !== undefined && `${plain(said.temperatureC)} °C`,
				said.temperatureBy
			])
		],
		['Salinity', list([said.salinity && salinityWords(said.salinity), said.salinityBy])],
		[
			'Titrant',
			list([
				said.lot && `lot ${said.lot}`,
				said.lotOpenedAtEpochMs !== undefined && `opened ${dateWords(said.lotOpenedAtEpochMs)}`
			])
		]
	];
	return lines.flatMap(([name, words]) => (words ? [{ name, words }] : []));
}

const purposes = {
	first: 'The first titration begun',
	repeat: 'A repeat begun',
	otherPerson: 'Another person begins',
	freshSample: 'Begun again with a fresh sample'
};

function testWords(event: Extract<TestEvent, { in: 'test' }>['event']): string {
	switch (event.type) {
		case 'titration.begun':
			return `${purposes[event.purpose]}${event.by ? `: ${event.by}` : ''}`;
		case 'titration.setAside':
			return `Titration ${event.titration + 1} shall not count: ${event.because}`;
		case 'marks.readByOther':
			return `${event.by} read titration ${event.titration + 1} without seeing it: ${marksWords(event.marks)}`;
		case 'difference.taken':
			return `Taken off: ${takenOffWords(event.less)}`;
		case 'note.written':
			return event.text === '' ? 'Note taken away' : `Note: ${event.text}`;
		case 'test.closed':
			return 'Put into the log';
		case 'test.removed':
			return 'Removed from the log';
	}
}

/** One thing that was done or said in a test. */
export function testEventWords(said: TestEvent, kit: Kit): string {
	if (said.in === 'walk') return walkWords(said.event, kit);
	if (said.in === 'test') return testWords(said.event);
	if (said.event.type === 'circumstances.passed') return 'On to the first step';
	const lines = circumstanceLines(said.event.circumstances, kit.analyte);
	return `Noted: ${lines.map(({ name, words }) => `${name.toLowerCase()} ${words}`).join('; ') || 'nothing'}`;
}
