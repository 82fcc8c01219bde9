import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	loadTestLog,
	remarksOn,
	replayTest,
	summaryOf,
	testResult,
	valuesOf
} from '$lib/procedure';

/** Tests as the first released form wrote them. Their files never change again. */
const golden = (name: string): unknown =>
	JSON.parse(
		readFileSync(new URL(`golden/test-log-format-1-${name}.json`, import.meta.url), 'utf8')
	);

describe('a test by syringe, refilled twice, read again and repeated', () => {
	const log = loadTestLog(golden('syringe'));
	const state = replayTest(log);
	const [first, second] = state.titrations;

	it('is replayed whole, to its end', () => {
		expect(state.refused).toBeNull();
		expect(state.phase).toBe('closed');
		expect(state.isRemoved).toBe(false);
		expect(state.note).toBe('Ben read without seeing mine.');
		expect(state.titrations.map(({ purpose, by, walk }) => [purpose, by, walk.value])).toEqual([
			['first', null, 'valued'],
			['repeat', 'Ben', 'valued']
		]);
		expect(new Date(state.at).toISOString()).toBe('2026-03-14T18:22:50.000Z');
	});

	it('keeps what was said before the number', () => {
		expect(state.circumstances).toEqual({
			water: 'tank',
			takenWhere: 'open water, front',
			takenAtEpochMs: Date.UTC(2026, 2, 14, 18, 5),
			hoursSinceDose: 5.5,
			hoursSinceLightsOn: 8,
			dosed: 'two parts, 40 mL a day each',
			dosingRuns: 'yes',
			tester: 'Mia',
			light: 'white',
			whiteCard: true,
			temperatureC: 24.5,
			temperatureBy: 'glass thermometer',
			salinity: { value: 1.0264, unit: 'specificGravity', sampleC: 25, referenceC: 25 },
			salinityBy: 'refractometer',
			lot: 'lot 7',
			lotOpenedAtEpochMs: Date.UTC(2026, 0, 3)
		});
	});

	it('leaves out what was taken back, shows what was put right, and keeps what stood there', () => {
		// 70 entries: 59 on the walks, an amendment, a drop taken back and its undoing; 2 before; 6 on
		// the test itself.
		expect(log.entries).toHaveLength(70);
		expect(state.titrations.map(({ events }) => events.length)).toEqual([41, 18]);
		const reads = (events = first?.events ?? []) =>
			events.flatMap(({ event }) => (event.type === 'marks.read' ? [event.marks] : []));
		expect(reads()).toEqual([{ sealMl: 0.78, lineMl: 0.61, drops: 43 }]);
		const written = log.entries.find(
			(entry) =>
				'event' in entry && entry.event.in === 'walk' && entry.event.event.type === 'marks.read'
		);
		expect(written).toMatchObject({ event: { event: { marks: { sealMl: 0.87, drops: 43 } } } });
		expect(first?.otherReadings).toEqual([{ by: 'Ben', marks: { sealMl: 0.78 } }]);
		// Set aside for a bubble, and that taken back.
		expect(second?.setAsideBecause).toBeNull();
	});

	it('has the values that its marks have by hand', () => {
		// The kit: 16 dKH a mL, less 0.30, for 6 mL; the sample was 10 mL, so 6/10 of it.
		// First: 0.70 drawn in again, and 1.00 − 0.78: 0.92 mL, 14.42, 8.652.
		// By the line the same; by 43 drops of 0.021 mL: 0.903 mL, 14.148, 8.4888.
		// Repeat: 0.68 drawn in again, and 0.22: 0.90 mL, 14.10, 8.46.
		const [a, b] = valuesOf(state);
		expect(a?.value).toBeCloseTo(8.652, 9);
		expect(b?.value).toBeCloseTo(8.46, 9);
		expect(a).toMatchObject({
			by: 'seal',
			from: 'start',
			refills: 1,
			sampleVolumeMl: 10,
			otherwise: [
				{ by: 'line', value: expect.closeTo(8.652, 9) },
				{ by: 'drops', value: expect.closeTo(8.4888, 9) }
			]
		});
		const result = testResult(state);
		expect(result?.value).toBeCloseTo(8.556, 9);
		expect(result?.counted).toHaveLength(2);
		expect(result?.isSuspect).toBe(false);
		expect(result && summaryOf(state, result)).toMatchObject({
			unit: 'dKH',
			values: [expect.closeTo(8.652, 9), expect.closeTo(8.46, 9)],
			sampleVolumeMl: 10,
			tester: 'Mia',
			lot: 'lot 7'
		});
	});

	it('has nothing to warn of', () => {
		for (const titration of state.titrations) {
			const { circumstances, at } = state;
			const remarks = remarksOn(titration, { at, expected: 8.5, circumstances });
			expect(remarks.filter(({ tone }) => tone === 'warn')).toEqual([]);
		}
	});
});

describe('a test by dropper, given up and begun again', () => {
	const log = loadTestLog(golden('dropper'));
	const state = replayTest(log);

	it('is replayed whole, to its end', () => {
		expect(state.refused).toBeNull();
		expect(state.phase).toBe('closed');
		expect(state.circumstances).toEqual({});
		expect(state.titrations.map(({ purpose, walk }) => [purpose, walk.value])).toEqual([
			['first', 'abandoned'],
			['freshSample', 'valued']
		]);
		// Removed a day later, and brought back.
		expect(state.isRemoved).toBe(false);
		expect(new Date(state.at).toISOString()).toBe('2026-03-21T17:43:51.000Z');
	});

	it('counts the drops that were not taken back', () => {
		// 42 entries: 10 on the walk that was given up, 25 on the other, its fifteenth drop and the undoing
		// of that; 1 before; 4 on the test itself.
		expect(log.entries).toHaveLength(42);
		expect(state.titrations.map(({ events }) => events.length)).toEqual([10, 25]);
		const fell = state.titrations[1]?.events.filter(({ event }) => event.type === 'titrant.fell');
		expect(fell).toHaveLength(14);
	});

	it('has the value of its drops by hand, and none for what was given up', () => {
		// 14 drops of 0.60 dKH, less 0.45.
		const [givenUp, fresh] = valuesOf(state);
		expect(givenUp).toEqual({ titration: 0, value: null, why: 'It was given up.' });
		expect(fresh?.value).toBeCloseTo(7.95, 9);
		expect(fresh).toMatchObject({ by: 'drops', sampleVolumeMl: 7, refills: 0 });
		const result = testResult(state);
		expect(result?.value).toBeCloseTo(7.95, 9);
		expect(result?.counted.map(({ titration }) => titration)).toEqual([1]);
		expect(result?.isSuspect).toBe(false);
	});
});
