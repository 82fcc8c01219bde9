import { describe, expect, test } from 'vitest';
import type { RunHeader } from '../../src/lib/records';
import { formerScenarioIds, scenarioIdNow } from '../../src/routes/former-scenarios';
import { triedOf } from '../../src/routes/kept-runs';
import { groupsOf } from '../../src/routes/practise/practice-groups';
import {
	drillItems,
	inListOrder,
	itemOf,
	practiceItems,
	type PracticeItem
} from '../../src/routes/practice-list.server';
import { madeUpScenario } from '../ui/played-run';

describe('itemOf', () => {
	test('lets only title, minutes, kit and what it measures through', () => {
		expect(itemOf(madeUpScenario())).toEqual({
			id: 'made-up',
			kind: 'case',
			title: 'Made up',
			minutes: 10,
			kitName: 'House syringe kit',
			measures: 'alkalinity'
		});
	});
});

test('drills come first, then cases, by what is measured, each from short to long', () => {
	const item = (
		id: string,
		kind: 'drill' | 'case',
		minutes: number,
		measures: PracticeItem['measures'] = 'alkalinity'
	): PracticeItem => ({ id, kind, minutes, title: id, kitName: 'House syringe kit', measures });
	const sorted = [
		item('m', 'drill', 1, 'magnesium'),
		item('c', 'case', 2),
		item('k', 'drill', 2, 'calcium'),
		item('b', 'drill', 4),
		item('z', 'drill', 3),
		item('y', 'drill', 3)
	].sort(inListOrder);
	expect(sorted.map(({ id }) => id)).toEqual(['y', 'z', 'b', 'k', 'm', 'c']);
	expect(groupsOf(sorted, []).map(({ title, words }) => `${title} ${words}`)).toEqual([
		'Alkalinity 4',
		'Calcium 1',
		'Magnesium 1'
	]);
});

test('a list says of no scenario what it trains; a debrief is told it of drills alone', () => {
	for (const item of practiceItems()) expect(item).not.toHaveProperty('trains');
	const drills = drillItems();
	expect(drills.map(({ id }) => id)).toEqual(
		practiceItems()
			.filter(({ kind }) => kind === 'drill')
			.map(({ id }) => id)
	);
	for (const { trains } of drills) expect(trains[0]?.skills.length).toBeGreaterThan(0);
});

test('an id that a scenario had once is nobody’s now, and leads to one that there is', () => {
	const ids = practiceItems().map(({ id }) => id);
	expect(formerScenarioIds.length).toBeGreaterThan(0);
	for (const id of formerScenarioIds) {
		expect(ids).not.toContain(id);
		expect(ids).toContain(scenarioIdNow(id));
	}
});

test('every scenario of the project is in the list once', () => {
	const ids = practiceItems().map(({ id }) => id);
	expect(ids.length).toBeGreaterThan(0);
	expect(new Set(ids).size).toBe(ids.length);
});

test('a file that is no scenario stops the build, naming file and field', () => {
	const text = JSON.stringify({ ...madeUpScenario(), minutes: 'ten' });
	expect(() => practiceItems({ '/scenarios/made-up.json': text })).toThrow(
		/scenarios\/made-up\.json.*minutes/s
	);
});

describe('triedOf', () => {
	const run = (more: Partial<RunHeader>): RunHeader => ({
		id: 'r',
		scenarioId: 'a',
		startedAtEpochMs: 0,
		changedAtEpochMs: 0,
		state: 'finished',
		where: '',
		head: null,
		...more
	});
	test('no run: not tried', () => {
		expect(triedOf([run({ scenarioId: 'b' })], 'a')).toEqual({ state: 'not tried' });
	});
	test('the newest run decides', () => {
		expect(
			triedOf(
				[
					run({ changedAtEpochMs: 1 }),
					run({ changedAtEpochMs: 2, state: 'unfinished', where: 'step 5, drop' })
				],
				'a'
			)
		).toEqual({ state: 'begun', where: 'step 5, drop' });
	});
	test('a finished run is remembered by its date', () => {
		const noon = new Date(2026, 10, 24, 12).getTime();
		expect(triedOf([run({ changedAtEpochMs: noon })], 'a')).toEqual({
			state: 'done',
			on: '24 Nov 2026'
		});
	});
});
