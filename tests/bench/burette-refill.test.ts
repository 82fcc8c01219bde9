import { describe, expect, it } from 'vitest';
import { ledgerOf, type Plan } from '../../src/lib/bench';
import { valueFromMark, type Kit } from '../../src/lib/kits';
import { benchWith, buretteKit, lineOf, slipOf, truthOf, worked } from './house';

/** A burette too small for an ordinary tank, whose leaflet has it filled again. */
const small: Kit = {
	...buretteKit,
	id: 'made-up-small-burette',
	delivery: { ...buretteKit.delivery, capacityMl: 1, refilled: true } as Kit['delivery']
};
const truth = truthOf();
const valueOf = (kit: Kit, plan: Partial<Plan>) => {
	const { marks, refilledMl, state } = worked(kit, plan, truth, 3);
	const { value } = valueFromMark(kit, { markMl: marks.levelMl, refilledMl });
	return { value, refilledMl, state, marks };
};

describe('a burette filled again', () => {
	it('counts all that was poured in on the way', () => {
		const [once, again] = [valueOf(buretteKit, {}), valueOf(small, {})];
		expect(benchWith(small).refilledMl).toBe(0);
		expect(again.state.refilledMl).toBeGreaterThan(1);
		expect(again.state.refilledMl).toBeCloseTo(again.refilledMl, 6);
		// Not more than a drop apart: where drops fall differs, and what is read of a mark.
		const dropWorth = valueFromMark(buretteKit, { markMl: 1 }).valuePerMl * small.delivery.dropMl;
		expect(Math.abs(again.value - once.value)).toBeLessThan(1.5 * dropWorth);
	});

	it('begun beside 0 each time, and counted from 0, costs what each filling is off', () => {
		const { state, marks, refilledMl } = valueOf(small, { fillOffMl: 0.1 });
		const fillings = 1 + state.refills;
		expect(fillings).toBeGreaterThan(2);
		// Poured in from the level that stood to 0.1; who counts to 0 counts 0.1 more.
		expect(refilledMl - state.refilledMl).toBeCloseTo(0.1 * state.refills, 6);
		const { value, valuePerMl } = valueFromMark(small, { markMl: marks.levelMl, refilledMl });
		const ledger = ledgerOf(state, { marks, value }, [slipOf('mixedMarks')]);
		expect(lineOf(ledger, 'slip-mixedMarks')).toBeCloseTo(0.1 * fillings * valuePerMl, 6);
		expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(1e-9);
		expect(Math.abs(lineOf(ledger, 'method'))).toBeLessThan(0.05);
	});

	it('leaves nothing unnamed in its ledger', () => {
		const { value, state, marks } = valueOf(small, {});
		const ledger = ledgerOf(state, { marks, value }, []);
		expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(1e-9);
		expect(Math.abs(lineOf(ledger, 'resolution'))).toBeLessThan(0.3);
	});
});
