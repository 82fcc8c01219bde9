import { describe, expect, it } from 'vitest';
import { faults, rankChecks } from '../../src/lib/judgement';
import {
	LONGEST_REASON,
	reasonOfSize,
	reasonOfThree,
	reasonOfTwo
} from '../../src/lib/judgement/ranking/reason-words';
import { houseHardnessKit } from '../../src/lib/kits';
import { methodFiguresFor } from '../../src/lib/metrology';

const names = [...new Set(faults.map(({ name }) => name)), 'something that is in no list'];
/** The longest are what may go wrong; every name is beside each of them. */
const longest = [...names].sort((a, b) => b.length - a.length).slice(0, 12);

/** Nobody does once what is a habit: no two of a kind come together. */
const stem = (name: string) => name.replace(/, (this once|as a habit|each time)$/u, '');
const areOfAKind = (...those: readonly string[]) => new Set(those.map(stem)).size < those.length;

/** Sentences that cannot be read, or that say nothing of what they part. */
function unreadable(sentences: readonly string[]): string[] {
	return sentences.filter((sentence) => {
		const told = sentence.match(/‘[^’]*’/gu) ?? [];
		return (
			sentence.length > LONGEST_REASON ||
			!/^It tells .*\.$/u.test(sentence) ||
			sentence.includes('…') ||
			// A name with nothing in it, or the same one set against itself.
			told.some((name) => name.length < 6) ||
			new Set(told).size < told.length ||
			told.length === 0
		);
	});
}

describe('the reason of a check, for every name of the catalogue', () => {
	it('is short and whole for one cause against nothing wrong, and for its size', () => {
		expect(names.length).toBeGreaterThan(80);
		const sentences = names.flatMap((name) => [reasonOfTwo([], [name]), reasonOfSize([name])]);
		expect(unreadable(sentences)).toEqual([]);
	});

	it('is short and whole for any two causes', () => {
		const pairs = names.flatMap((one, i) => names.slice(0, i).map((two) => [one, two] as const));
		const together = pairs.filter((both) => !areOfAKind(...both));
		expect(unreadable(pairs.map(([one, two]) => reasonOfTwo([one], [two])))).toEqual([]);
		expect(unreadable(together.map((both) => reasonOfTwo([], both)))).toEqual([]);
		expect(unreadable(together.map((both) => reasonOfSize(both)))).toEqual([]);
	});

	it('is short and whole where causes come together, whatever they share', () => {
		const sentences = longest.flatMap((a) =>
			names.flatMap((b) =>
				longest.flatMap((c) =>
					areOfAKind(a, b) || areOfAKind(b, c) || a === c
						? []
						: [
								reasonOfTwo([a, b], [c]),
								reasonOfTwo([a], [b, c]),
								reasonOfTwo([a], [a, b]),
								reasonOfTwo([a, b], [a, c]),
								...[true, false].flatMap((all) => reasonOfThree([[a], [b], [c]], all) ?? [])
							]
				)
			)
		);
		expect(sentences.length).toBeGreaterThan(10_000);
		expect(unreadable(sentences)).toEqual([]);
	});

	it('is short and whole for two that are together on either side', () => {
		const pairs = longest.flatMap((one, i) =>
			longest.slice(0, i).flatMap((two) => (areOfAKind(one, two) ? [] : [[one, two]]))
		);
		const sentences = pairs.flatMap((one) =>
			pairs
				.filter((two) => !one.some((name) => two.includes(name)))
				.map((two) => reasonOfTwo(one, two))
		);
		expect(unreadable(sentences)).toEqual([]);
	});
});

describe('what is said of two that have something in common', () => {
	const filling = 'a filling left out of the sum, or counted twice';
	const drops = 'more than one drop at the end';
	const light = 'end judged in blue or dim light';

	it('names what comes on top once', () => {
		const onTop = `It tells whether, beside ‘${filling}’, there was ‘${drops}’ too.`;
		expect(reasonOfTwo([filling], [filling, drops])).toBe(onTop);
		expect(reasonOfTwo([drops, filling], [filling])).toBe(onTop);
	});
	it('sets only what differs against each other', () => {
		expect(reasonOfTwo([filling, drops], [filling, light])).toBe(
			`It tells ‘${drops}’ from ‘${light}’.`
		);
	});
	it('asks of one cause whether it is a habit', () => {
		expect(reasonOfTwo(['tip put on late, this once'], ['tip put on late, as a habit'])).toBe(
			'It tells whether ‘tip put on late’ was this once or is a habit.'
		);
	});
	it('keeps once and habit apart where a third stands beside them', () => {
		const three = [[], ['tip put on late, this once'], ['tip put on late, as a habit']] as const;
		expect(reasonOfThree(three, false)).toBe(
			'It tells ‘nothing wrong’ from ‘tip put on late, this once’ and from ‘tip put on late, as a habit’.'
		);
	});
});

describe('a reading of calcium and magnesium that left a filling out', () => {
	const { ranked, repeatReads } = rankChecks(
		[
			{
				kind: 'test',
				from: 'first',
				reading: { id: 'a', label: 'A', value: 24, expandedUncertainty: 1.5, unit: 'mmol/L' }
			}
		],
		{
			unit: 'mmol/L',
			analyte: 'hardness',
			method: methodFiguresFor(houseHardnessKit, 'hardness')
		}
	);
	it('has a short reason for every check and question that is left', () => {
		const reasons = ranked.map(({ because }) => because);
		expect(reasons.length).toBeGreaterThan(15);
		expect(Math.max(...reasons.map(({ length }) => length))).toBeLessThanOrEqual(LONGEST_REASON);
		expect(reasons.join(' ')).not.toMatch(/’ with |…/u);
		expect(ranked[0]!.because).toMatch(/^It tells whether, beside ‘a filling left out/u);
	});
	it('foresees of the next test what the water holds, not what was read', () => {
		// Two fillings of 1 mL by a leaflet of 40 mmol/L for each: 24 read, 64 in the water.
		expect(repeatReads).toMatchObject({ unit: 'mmol/L', value: expect.closeTo(64, 0) });
	});
});
