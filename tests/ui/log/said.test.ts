import { describe, expect, test } from 'vitest';
import { houseDropperKit, houseSyringeKit } from '$lib/kits';
import { replayTest } from '$lib/procedure';
import { circumstanceLines, testEventWords } from '../../../src/lib/ui/log/event-words';
import { saidLines } from '../../../src/lib/ui/log/said';
import { PlayedTank } from '../played-tank.svelte';

const walked = () => {
	const tank = new PlayedTank();
	tank.noteCircumstances({ water: 'tank', tester: 'Ada' });
	tank.goOnTo('fill');
	tank.say({ type: 'titrant.drawn', sealMl: 1, lineMl: 0.83 });
	return tank.walkThrough({ sealMl: 0.42 });
};

describe('what was said in a test', () => {
	test('every entry has its line, in order and in words', () => {
		const { log } = walked();
		const lines = saidLines(log);
		expect(lines.map(({ id }) => id)).toEqual(log.entries.map(({ id }) => id));
		expect(lines.every(({ words, state }) => words !== '' && state === 'holds')).toBe(true);
		const words = lines.map((line) => line.words);
		expect(words).toContain('Noted: water tank; tested by Ada');
		expect(words).toContain('Filled: seal 1.00, liquid line 0.83');
		expect(words).toContain('Read: seal 0.42');
	});

	test('a corrected mark keeps its old value, and says the new one', () => {
		const tank = walked();
		tank.wait(60).amendMarks(0, { sealMl: 0.24 });
		const told = saidLines(tank.log).filter(({ words }) => words.includes('seal 0.'));
		expect(told.map(({ words, state }) => [words, state])).toEqual([
			['Read: seal 0.42', 'replaced'],
			['Corrected to: Read: seal 0.24', 'holds']
		]);
	});

	test('what was taken back is there, and so is the taking back', () => {
		const tank = walked();
		tank.wait(5).undo();
		// One tap said both that the mark was read and that the step is done.
		const told = saidLines(tank.log).slice(-4);
		expect(told.map(({ words, state }) => [words, state])).toEqual([
			['Read: seal 0.42', 'takenBack'],
			['Step done', 'takenBack'],
			['Taken back: Step done', 'holds'],
			['Taken back: Read: seal 0.42', 'holds']
		]);
	});

	test('a taking back that was taken back leaves the entry as it was', () => {
		const tank = walked();
		const read = tank.log.entries.find(
			(entry) =>
				'event' in entry && entry.event.in === 'walk' && entry.event.event.type === 'marks.read'
		);
		if (!read) throw new Error('a mark was read');
		const log = {
			...tank.log,
			entries: [
				...tank.log.entries,
				{ id: 'u1', at: read.at + 1e5, undoes: read.id },
				{ id: 'u2', at: read.at + 2e5, undoes: 'u1' }
			]
		};
		expect(replayTest(log).phase).toBe('result');
		const stateOf = (id: string) => saidLines(log).find((line) => line.id === id)?.state;
		expect([stateOf(read.id), stateOf('u1'), stateOf('u2')]).toEqual([
			'holds',
			'takenBack',
			'holds'
		]);
	});
});

describe('words for what happened', () => {
	const said = (event: Parameters<typeof testEventWords>[0]) =>
		testEventWords(event, houseSyringeKit);

	test('a refill says what stood there before it', () => {
		const event = { type: 'titrant.drawn', sealMl: 1, before: { sealMl: 0.12 } } as const;
		expect(said({ in: 'walk', titration: 0, event })).toBe(
			'Refilled: seal 1.00; before it seal 0.12'
		);
	});

	test('drops are counted in drops', () => {
		const event = { type: 'marks.read', marks: { drops: 1 } } as const;
		expect(testEventWords({ in: 'walk', titration: 0, event }, houseDropperKit)).toBe(
			'Read: 1 drop'
		);
	});

	test('a reason for setting aside is kept in its words', () => {
		expect(
			said({
				in: 'test',
				event: { type: 'titration.setAside', titration: 1, because: 'air in the tip' }
			})
		).toBe('Titration 2 shall not count: air in the tip');
	});

	test('circumstances name what was said and nothing else', () => {
		expect(circumstanceLines({})).toEqual([]);
		expect(circumstanceLines({ light: 'blue', whiteCard: true, hoursSinceDose: 0.5 })).toEqual([
			{ name: 'Last dose', words: '0.5 h before' },
			{ name: 'Light', words: 'blue, white card' }
		]);
	});
});
