import { describe, expect, it } from 'vitest';
import { decodeRun, encodeRun, replayRun } from '../../src/lib/procedure';
import { madeUpScenario, PlayedRun } from '../ui/played-run';

const scenario = madeUpScenario();
const played = new PlayedRun(scenario)
	.titrate()
	.inquire({ type: 'result.asked', check: 'secondMethod' })
	.conclude('stands');

describe('a run as text for a link', () => {
	const text = encodeRun(played.log);

	it('comes back as the same run', () => {
		const log = decodeRun(text);
		const { at: _at, ...there } = replayRun(log, scenario);
		const { at: _here, ...here } = played.run;
		const benches = (run: typeof there) =>
			run.titrations.map(({ bench, walk }) => ({ bench, value: walk.value }));
		expect(benches(there)).toEqual(benches(here));
		expect(there.inquiry.context).toEqual(here.inquiry.context);
		expect(there.refused).toBeNull();
	});

	it('holds only what an address may hold, and is short', () => {
		expect(text).toMatch(/^[A-Za-z0-9_-]+$/);
		// A whole titration with a check stays below what links of 4,000 signs can carry.
		expect(played.log.entries.length).toBeGreaterThan(60);
		expect(text.length).toBeLessThan(4000);
	});

	it('tells nothing of the device: neither date nor names of entries', () => {
		const later = { ...played.log, id: 'secret-name', startedAtEpochMs: 1_763_971_200_000 };
		expect(encodeRun(later)).toBe(text);
		expect(decodeRun(text, { id: 'mine', startedAtEpochMs: 5 })).toMatchObject({
			id: 'mine',
			startedAtEpochMs: 5
		});
	});

	it('leaves out what was taken back', () => {
		const undone = {
			...played.log,
			entries: [
				...played.log.entries,
				{ id: 'u', at: played.run.at, undoes: played.log.entries.at(-1)!.id }
			]
		};
		expect(decodeRun(encodeRun(undone)).entries).toHaveLength(played.log.entries.length - 1);
	});

	it('carries a kit whole when it is not a house kit as it is now', () => {
		const own = { ...played.log, kit: { ...played.log.kit, name: 'Ärger’s kit — 1' } };
		expect(decodeRun(encodeRun(own)).kit).toEqual(own.kit);
	});

	it.each([
		['nothing', ''],
		['a cut-off text', text.slice(0, -40)],
		['another text', 'aGVsbG8'],
		['signs that are none of it', '%%%'],
		[
			'a step that names no event',
			btoa(
				JSON.stringify({
					v: 1,
					scenario: 'a',
					seed: 1,
					coaching: 'silent',
					kit: 'house-syringe',
					events: [],
					steps: [1, 0]
				})
			)
		],
		[
			'a kit nobody knows',
			btoa(
				JSON.stringify({
					v: 1,
					scenario: 'a',
					seed: 1,
					coaching: 'silent',
					kit: 'no-kit',
					events: [],
					steps: []
				})
			)
		]
	])('%s gives a plain error', (_what, broken) => {
		expect(() => decodeRun(broken)).toThrow(RangeError);
	});
});
