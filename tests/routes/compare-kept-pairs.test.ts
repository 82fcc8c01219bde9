import { describe, expect, test } from 'vitest';
import { houseSyringeKit } from '../../src/lib/kits';
import type { CheckEvent, Evidence } from '../../src/lib/observation';
import type { Records } from '../../src/lib/records';
import { keptPairs } from '../../src/routes/check/compare/kept-pairs';

type Made = { id: string; evidence: readonly Evidence[]; isUnfinished?: boolean; analyte?: string };

/** Records that hold these checks and nothing else. */
function recordsOf(made: readonly Made[]): Records {
	const headers = made.map(({ id, analyte = 'alkalinity', isUnfinished = false }, i) => ({
		id,
		analyte,
		isUnfinished,
		startedAtEpochMs: 1000 * (i + 1)
	}));
	const load = (id: string) => {
		const found = made.find((each) => each.id === id)!;
		const entries = found.evidence.map((evidence, i) => ({
			id: `e${i}`,
			at: 1000,
			event: { type: 'evidence.given', evidence } satisfies CheckEvent
		}));
		const head = {
			format: 1,
			id,
			startedAtEpochMs: 1000,
			analyte: 'alkalinity',
			kit: id === 'damaged' ? 'no kit' : houseSyringeKit,
			kitVersion: 0
		};
		return Promise.resolve({ header: { head }, entries });
	};
	const checks = {
		// The newest first, as the records list them.
		list: ({ analyte }: { analyte: string }) =>
			Promise.resolve(
				headers.filter((each) => !each.isUnfinished && each.analyte === analyte).reverse()
			),
		unfinished: () => Promise.resolve(headers.filter((each) => each.isUnfinished)),
		load
	};
	return { checks } as unknown as Records;
}
const reading = (id: string, value: number, expandedUncertainty: number, unit = 'dKH') =>
	({ id, label: id, value, expandedUncertainty, unit }) as const;
const first = (value: number): Evidence =>
	({ kind: 'test', from: 'first', reading: reading('own', value, 0.4) }) as Evidence;
const second = (value: number, more: object = {}, unit = 'dKH', id = 'other'): Evidence =>
	({ kind: 'secondMethod', reading: reading(id, value, 0.3, unit), ...more }) as Evidence;
const asked = { analyte: 'alkalinity', unit: 'dKH' } as const;

describe('samples that kept checks know by two methods', () => {
	test('are put together by kit and method, the oldest first, unfinished checks too', async () => {
		const found = await keptPairs(
			recordsOf([
				{ id: 'a', evidence: [first(7.4), second(7.9, { method: 'photometer' })] },
				{ id: 'b', evidence: [first(8), second(8.2, { instrument: 'Second kit' })] },
				{
					id: 'c',
					isUnfinished: true,
					evidence: [first(8.4), second(8.3, { method: 'photometer' })]
				}
			]),
			asked
		);
		expect(found).toEqual([
			{
				name: `${houseSyringeKit.name} and a photometer`,
				lines: ['7.4 ± 0.4; 7.9 ± 0.3', '8.4 ± 0.4; 8.3 ± 0.3']
			},
			{ name: `${houseSyringeKit.name} and Second kit`, lines: ['8.0 ± 0.4; 8.2 ± 0.3'] }
		]);
	});
	test.each([
		['another portion of water', { sampling: 'a second cup' }],
		['a report without borate', { reports: 'carbonate' }]
	])('%s is no pair', async (_, more) => {
		const records = recordsOf([{ id: 'a', evidence: [first(7.4), second(7.9, more)] }]);
		expect(await keptPairs(records, asked)).toEqual([]);
	});
	test('a ± with another coverage factor and in another unit is brought to that of the page', async () => {
		// 2.8 meq/L are 7.851 dKH at 0.35665 meq/L each; 0.3 meq/L at k = 3 are 0.2 at k = 2, 0.561 dKH.
		const records = recordsOf([
			{ id: 'a', evidence: [first(7.4), second(2.8, { coverageFactor: 3 }, 'meq/L')] }
		]);
		expect((await keptPairs(records, asked))[0]?.lines).toEqual(['7.4 ± 0.4; 7.9 ± 0.6']);
	});
	test('a second reading of one sample by the same method does not count the own one twice', async () => {
		const records = recordsOf([
			{ id: 'a', evidence: [first(7.4), second(7.9), second(8.1, {}, 'dKH', 'again')] }
		]);
		expect((await keptPairs(records, asked))[0]?.lines).toEqual(['7.4 ± 0.4; 7.9 ± 0.3']);
	});
	test('one without a second method, of another analyte or damaged says nothing', async () => {
		const records = recordsOf([
			{ id: 'a', evidence: [first(7.4)] },
			{ id: 'b', evidence: [second(7.9)] },
			{ id: 'c', analyte: 'calcium', evidence: [first(7.4), second(7.9)] },
			{ id: 'damaged', evidence: [first(7.4), second(7.9)] }
		]);
		expect(await keptPairs(records, asked)).toEqual([]);
	});
});
