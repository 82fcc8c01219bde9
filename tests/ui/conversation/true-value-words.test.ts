import { describe, expect, test } from 'vitest';
import { cues, diagnose, faults } from '../../../src/lib/judgement';
import type { Evidence } from '../../../src/lib/observation';
import { explanationRows } from '../../../src/lib/ui/conversation/explanation-rows';
import { ifSoWords, trueValueSentence } from '../../../src/lib/ui/conversation/true-value-words';
import { earlier, test as tested } from '../../judgement/diagnosed';

const catalogue = { faults, cues };
const told = (evidence: readonly Evidence[]) => {
	const diagnosis = diagnose(evidence);
	const rows = explanationRows(diagnosis, catalogue);
	return {
		caption: trueValueSentence(diagnosis, catalogue).replace(/\s/g, ' '),
		ifSo: (start: string) => {
			const row = rows.find(({ title }) => title.startsWith(start))!;
			return ifSoWords(diagnosis, row).replace(/\s/g, ' ');
		}
	};
};

describe('what the water holds under a condition', () => {
	test('is said once: a hump of which more than one account is part has a condition of its own', () => {
		const { caption, ifSo } = told([tested('a', 5.4)]);
		expect(ifSo('No fault')).toBe('If so, the water holds 5.4 ± 0.5 dKH.');
		expect(caption).toMatch(
			/^5\.5 ± 1\.0 dKH if nothing is wrong, or nothing that moves it far; 8\.1 ± 0\.7 if it is “[^”]+”, or something that comes to the same\.$/
		);
	});
	test('of several whose values lie apart is no one value with its ±', () => {
		const { ifSo } = told([tested('a', 5.4)]);
		expect(ifSo('Filled by the liquid')).toMatch(
			/^If so, what the water holds depends on which it is: from about [4-6]\.\d to 8\.\d dKH\.$/
		);
	});
	test('is that of the water where its change makes the hump', () => {
		const { caption } = told([tested('a', 5.4), earlier('e', 8, 7)]);
		expect(caption).toMatch(/5\.\d ± \d\.\d(?: dKH)? if the water has really changed/);
	});
});
