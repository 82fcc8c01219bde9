import { describe, expect, test } from 'vitest';
import { slipsIn } from '../../../src/lib/procedure';
import { clockWords, replayLines } from '../../../src/lib/ui/debrief/replay-lines';
import { planOf, PlayedRun } from '../played-run';

describe('replayLines', () => {
	test('ends in the run as it is, and tells each drop once', () => {
		const played = new PlayedRun().titrate();
		const lines = replayLines(played.log, played.run.scenario, []);
		expect(lines[lines.length - 1]?.run).toEqual(played.run);
		const told = lines.reduce(
			(sum, line) => sum + Number(/(\d+) drops? fell/.exec(line.words)?.[1] ?? 0),
			0
		);
		expect(told).toBe(played.run.titrations[0]?.bench.drops.length);
		expect(told).toBeGreaterThan(10);
	});

	test('small steps of one move are one line', () => {
		const played = new PlayedRun().titrate();
		const last = played.log.entries.length;
		for (const degrees of [1, 2, 3])
			played.add(played.run.at + 10, {
				in: 'bench',
				titration: 0,
				action: { type: 'eye.move', degrees }
			});
		const before = replayLines(
			{ ...played.log, entries: played.log.entries.slice(0, last) },
			played.run.scenario,
			[]
		);
		const after = replayLines(played.log, played.run.scenario, []);
		expect(after.length).toBe(before.length + 1);
		expect(after[after.length - 1]?.words).toBe('Eye 3° above the mark');
	});

	test('every slip is named where it shows', () => {
		const played = new PlayedRun().titrate(planOf({ fillBy: 'line', touchedOff: false }));
		const [first] = played.run.titrations;
		if (!first) throw new Error('no titration');
		const slips = slipsIn(played.run.kit, first.steps, first.events)
			.filter((slip) => !slip.provisional)
			.map((slip) => ({ slip, name: slip.kind }));
		expect(slips.map(({ name }) => name)).toContain('mixedMarks');
		const named = replayLines(played.log, played.run.scenario, slips).flatMap((line) => line.slips);
		expect([...named].sort()).toEqual(slips.map(({ name }) => name).sort());
	});

	test('what was taken back is left out', () => {
		const played = new PlayedRun().titrate();
		const reported = played.log.entries.findLast(
			(entry) =>
				'event' in entry && entry.event.in === 'walk' && entry.event.event.type === 'value.reported'
		);
		const inquiry = played.log.entries.length - 1;
		const log = {
			...played.log,
			entries: [
				...played.log.entries.slice(0, inquiry),
				{ id: 'u1', at: played.run.at, undoes: reported?.id ?? '' }
			]
		};
		const lines = replayLines(log, played.run.scenario, []);
		expect(lines.some((line) => line.words.startsWith('Reported'))).toBe(false);
		expect(lines.some((line) => line.words.startsWith('Read: seal'))).toBe(true);
	});
});

test.each([
	[0, '0:00'],
	[59_999, '0:59'],
	[187_000, '3:07']
])('%d ms is %s', (ms, text) => expect(clockWords(ms)).toBe(text));
