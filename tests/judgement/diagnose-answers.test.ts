import { describe, expect, it } from 'vitest';
import { diagnose, type Diagnosis } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { earlier, test } from './diagnosed';

/**
 * An answer that says what was done makes it the first account, unless its size cannot explain the
 * reading. Situations: common practice, no source; sizes by hand beside them.
 */
const answered = (cue: string, answer: string): Evidence => ({ kind: 'cue', cue, answer });

/** A slip as a habit and the same slip once are one account: nothing but a repeat tells them apart. */
function accountsOf({ explanations }: Diagnosis): { account: string; probability: number }[] {
	const sums = new Map<string, number>();
	for (const { faults, probability } of explanations) {
		const account = faults.map((id) => id.replace(/Once$/, '')).join('+') || 'nothing wrong';
		sums.set(account, (sums.get(account) ?? 0) + probability);
	}
	return [...sums]
		.map(([account, probability]) => ({ account, probability }))
		.sort((a, b) => b.probability - a.probability);
}

describe('an answer that says what was done', () => {
	it.each<[string, string, Evidence[]]>([
		[
			// Half a microlitre of base of 8 mol/L takes 0.12 mL of titrant, about 2 dKH.
			'base from another test in the first vial',
			'baseTrace',
			[
				test('a', 10.2),
				test('b', 8, 'repeatFull', { sampleWare: 'second vial' }),
				answered('sampleWareRinsed', 'traces')
			]
		],
		[
			// The first test took it up: in the same vial the repeat is free of it.
			'base from another test, and the repeat in the same vial',
			'baseTrace',
			[test('a', 10.2), test('b', 8, 'repeatFull'), answered('sampleWareRinsed', 'traces')]
		],
		[
			// Full scale 16: 8.4 used are 7.6 left, hidden in the middle of the scale.
			'the scale read from its other end',
			'usedForLeft',
			[test('a', 7.5), answered('usedOrLeft', 'other')]
		],
		[
			'the scale read from its other end, with last week’s reading',
			'usedForLeft',
			[test('a', 7.5), answered('usedOrLeft', 'other'), earlier('e', 8.2, 7)]
		],
		[
			'the colour followed as it faded',
			'chasedColour',
			[test('a', 8.7), answered('endHeld', 'followed')]
		],
		[
			'the colour followed as it faded, with last week’s reading',
			'chasedColour',
			[test('a', 8.7), answered('endHeld', 'followed'), earlier('e', 8.2, 7)]
		],
		[
			'filled by the seal, read by the liquid',
			'readByLine',
			[test('a', 10.7), answered('marksUsed', 'sealThenLine')]
		],
		[
			'filled by the liquid, read by the seal',
			'filledByLine',
			[test('a', 5.3), answered('marksUsed', 'lineThenSeal')]
		],
		['the tip put on late', 'tipFittedLate', [test('a', 10.1), answered('tip', 'late')]],
		[
			'a colour that went within seconds',
			'stoppedAtFlash',
			[test('a', 7.2), answered('endHeld', 'faded'), earlier('e', 8, 7)]
		]
	])('%s', (_, fault, evidence) => {
		const [first] = accountsOf(diagnose(evidence));
		expect(first?.account).toBe(fault);
		expect(first?.probability).toBeLessThan(0.9);
		// It is the answer that does it.
		const without = accountsOf(diagnose(evidence.filter(({ kind }) => kind !== 'cue')));
		const before = without.find(({ account }) => account === fault)?.probability ?? 0;
		expect(first?.probability).toBeGreaterThan(2 * before);
	});

	it.each<[string, string, Evidence[]]>([
		[
			'chasing moves it by tenths, not by 4 dKH',
			'chasedColour',
			[test('a', 12), answered('endHeld', 'followed'), earlier('e', 8, 7)]
		],
		[
			'a scale of 16 read from its other end makes 5 of 11, not of 8',
			'usedForLeft',
			[test('a', 5), answered('usedOrLeft', 'other'), earlier('e', 8, 7)]
		],
		[
			'base adds, it takes nothing away',
			'baseTrace',
			[
				test('a', 6),
				test('b', 8, 'repeatFull', { sampleWare: 'second vial' }),
				answered('sampleWareRinsed', 'traces')
			]
		]
	])('is not believed where its size cannot explain the reading: %s', (_, fault, evidence) => {
		const { faults } = diagnose(evidence);
		const both = (faults[fault] ?? 0) + (faults[`${fault}Once`] ?? 0);
		const [first] = accountsOf(diagnose(evidence));
		expect(first?.account).not.toBe(fault);
		expect(both).toBeLessThan(0.5);
	});
});
