import { describe, expect, test } from 'vitest';
import {
	draftOfKit,
	emptyDraft,
	houseDropperKit,
	houseKits,
	houseSyringeKit,
	type Kit
} from '../../../src/lib/kits';
import { readingBudget } from '../../../src/lib/metrology';
import { grantedFor } from '../../../src/lib/ui/kits/granted-words';
import { impliedBy } from '../../../src/lib/ui/kits/implied-words';
import { ageWords, worthText } from '../../../src/lib/ui/kits/kit-words';

const words = (draft: Parameters<typeof impliedBy>[0]) =>
	Object.values(impliedBy(draft)).flatMap((each) => each.map((one) => one.words));

describe('what the margin says', () => {
	test('nothing of worth while figures are missing; only what an empty drop is taken for', () => {
		expect(words(emptyDraft())).toEqual([expect.stringMatching(/^A drop is taken for 0\.03 mL/)]);
	});
	test('as soon as the figures stand, whatever else is empty', () => {
		const draft = draftOfKit(houseSyringeKit);
		const bare = { ...draft, name: '', startColour: '', endColour: '', reagents: [] };
		// 16 dKH per mL in the table: drops of 0.021 mL, lines of 0.02 mL.
		expect(words(bare)).toContain('A drop is worth about 0.34 dKH.');
		expect(words(bare)).toContain('A line of the scale is worth about 0.32 dKH.');
		expect(words(bare)).toContain('The table implies an acid of about 0.034 mol/L.');
	});
	test('a slip in a row is named by its number', () => {
		const draft = draftOfKit(houseSyringeKit);
		const row = draft.rows[4];
		if (!row) throw new Error('five rows expected');
		row.value = '7.1';
		expect(words(draft).some((each) => /^Row 5 .* says 7\.1/.test(each))).toBe(true);
	});
	test('values that are likely in another unit are asked about', () => {
		const draft = draftOfKit(houseDropperKit);
		// 0.6 dKH as ppm CaCO3 (17.85 ppm each), left in dKH.
		draft.valuePerDrop = '10.7';
		draft.offset = '0';
		expect(words(draft).some((each) => /128 in ppm CaCO₃ would be 7\.2 dKH/.test(each))).toBe(true);
	});
	test('a table in another unit than the one chosen is asked about, even where its blanks refuse it', () => {
		const times = (factor: number) => {
			const draft = draftOfKit(houseSyringeKit);
			for (const row of draft.rows)
				row.value = String(Number((Number(row.value.replace('−', '-')) * factor).toFixed(3)));
			return words(draft).filter((each) => /would be/.test(each));
		};
		expect(times(1)).toEqual([]);
		// Its table reaches 16 dKH and less: 0.357 meq/L and 17.85 ppm CaCO3 each.
		expect(times(0.3567)).toEqual([expect.stringMatching(/^One filling would go .*In meq\/L/)]);
		expect(times(17.85)).toEqual([expect.stringMatching(/^The table goes .*In ppm CaCO₃/)]);
	});
	test('a claim that was made in another unit is asked about', () => {
		const draft = { ...draftOfKit(houseSyringeKit), statedAccuracy: '5' };
		// 5 ppm CaCO3 are 0.28 dKH.
		expect(words(draft)).toContain('That is coarse for a kit. 5 in ppm CaCO₃ would be 0.3 dKH.');
		expect(words({ ...draft, statedAccuracy: '0.5' }).join()).not.toContain('coarse');
	});
	test('worths keep two figures, ages their coarsest words', () => {
		expect([0.3, 0.0341, 12.4, 123].map(worthText)).toEqual(['0.30', '0.034', '12', '123']);
		const day = 86_400_000;
		expect([0, 1, 20, 35, 240, 800].map((days) => ageWords(0, days * day))).toEqual([
			'today',
			'1 day',
			'20 days',
			'5 weeks',
			'8 months',
			'2 years'
		]);
	});
});

describe('what is taken for granted', () => {
	/** A kit whose owner typed in exactly what the empty blank stands for. */
	const asTyped = (kit: Kit, field: string, taken: number): Kit => ({
		...kit,
		assumed: { [field]: taken }
	});
	/** Fields of limits are even when typed in and triangular by default: sqrt(6) against sqrt(3). */
	const limits = ['sampleHalfWidth', 'deliveryHalfWidth'];
	const lineOf = {
		sampleHalfWidth: 'sampleVolume',
		deliveryHalfWidth: 'deliveryScale',
		dropSd: 'dropSize',
		titrantSd: 'titrantStrength',
		colourDrops: 'endColour',
		tipSdMl: 'tipVolume'
	} as const;

	test.each(houseKits.map((kit) => [kit.name, kit] as const))(
		'%s: what an empty blank shows is what the budget takes',
		(_, kit) => {
			const granted = grantedFor(draftOfKit(kit)).filter(({ field }) => field !== 'tipSdMl');
			expect(granted.length).toBeGreaterThanOrEqual(4);
			for (const { field, taken } of granted) {
				const shown = field === 'colourDrops' ? Number(taken) : Number(taken) / 100;
				const usedMl = kit.delivery.by === 'dropper' ? 0.5 : kit.delivery.capacityMl;
				const valuePerMl = 12;
				const reading = { value: usedMl * valuePerMl, valuePerMl, usedMl };
				const contribution = (of: Kit) =>
					readingBudget(of, reading).lines.find(({ id }) => id === lineOf[field])?.contribution;
				const byDefault = contribution(kit);
				const typed = contribution(asTyped(kit, field, shown));
				if (byDefault === undefined || typed === undefined) throw new Error(`no line ${field}`);
				const isLimit = limits.includes(field) && kit.sample.measuredIn === 'syringe';
				const ratio = isLimit ? Math.SQRT1_2 : 1;
				// Two digits are shown.
				expect(Math.abs(byDefault / (typed * ratio) - 1)).toBeLessThan(0.03);
			}
		}
	);
});
