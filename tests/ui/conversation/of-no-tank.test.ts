import { describe, expect, test } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import { forms } from '../../../src/lib/ui/conversation/forms/forms';
import type { EvidenceForm, FormContext } from '../../../src/lib/ui/conversation/forms/form';

const context: FormContext = {
	analyte: 'alkalinity',
	unit: 'dKH',
	first: { id: 'q', label: 'Q', value: 8, expandedUncertainty: 0.4, unit: 'dKH' },
	kit: houseSyringeKit,
	evidence: [],
	id: 'new'
};

describe('a number of the tank that no tank holds', () => {
	test.each(['repeat', 'secondMethod', 'earlier', 'freshLot'] as const)(
		'is asked about once where it is typed: %s',
		(form) => {
			const doubts = (value: string, about = context) => forms[form].doubts?.({ value }, about);
			expect(doubts('80')?.value).toMatch(/^No tank holds 80\sdKH\. Look at its figures/u);
			expect(doubts('0.8')?.value).toMatch(/^No tank holds 0.8\sdKH/u);
			expect(doubts('12')).toEqual({});
			expect(doubts('')).toEqual({});
			// Where the reading in question is such a number, others like it are what is asked for.
			const ofSuch = { ...context, first: { ...context.first!, value: 82 } };
			expect(doubts('80', ofSuch)).toEqual({});
		}
	);
	test('is taken where water of any content is tested', () => {
		expect(
			(forms.reference as EvidenceForm).doubts?.({ value: '30', nominal: '30' }, context) ?? {}
		).toEqual({});
	});
});
