import { flushSync } from 'svelte';
import { describe, expect, test } from 'vitest';
import { draftOfKit, emptyDraft, houseDropperKit, houseSyringeKit } from '../../../src/lib/kits';
import { KitForm } from '../../../src/lib/ui/kits/kit-form.svelte';
import { usualCautions } from '../../../src/lib/ui/kits/usual-cautions';

const filled = () => new KitForm(draftOfKit(houseSyringeKit));

describe('a leaflet being typed in', () => {
	test('an empty blank is not nagged about until the kit is to be kept', () => {
		const form = new KitForm(emptyDraft());
		form.leave('name');
		expect(form.problemAt('name', '')).toBeUndefined();
		form.tryAll();
		expect(form.problemAt('name', '')).toMatch(/name/);
	});
	test('nonsense is spoken of once its blank has been left, and not before', () => {
		const form = filled();
		form.draft.capacityMl = '1o';
		flushSync();
		expect(form.problemAt('capacityMl', '1o')).toBeUndefined();
		form.leave('capacityMl');
		expect(form.problemAt('capacityMl', '1o')).toMatch(/“1o” is no number/);
		expect(form.kit).toBeNull();
		form.draft.capacityMl = '1,0';
		flushSync();
		expect(form.problemAt('capacityMl', '1,0')).toBeUndefined();
		expect(form.kit?.delivery).toMatchObject({ capacityMl: 1 });
	});
	test('a dropper bottle has no mL to count by', () => {
		const form = filled();
		form.setWay('dropper');
		expect(form.draft.column).toBe('drops');
		form.draft.kind = 'perMl';
		form.setWay('dropper');
		expect(form.draft.kind).toBe('perDrop');
		const dropper = new KitForm(draftOfKit(houseDropperKit));
		dropper.setWay('syringe');
		expect(dropper.draft.kind).toBe('perDrop');
	});
	test('reagents move, go out and come back with all that was typed', () => {
		const form = filled();
		form.addReagent();
		const [first, second] = form.draft.reagents;
		if (!first || !second) throw new Error('two reagents expected');
		expect(second.id).not.toBe(first.id);
		second.name = 'B';
		form.moveReagent(1, -1);
		expect(form.draft.reagents.map(({ name }) => name)).toEqual(['B', 'indicator']);
		const gone = form.removeReagent(0);
		expect(form.draft.reagents.map(({ name }) => name)).toEqual(['indicator']);
		if (gone) form.putReagent(1, gone);
		expect(form.draft.reagents.map(({ name }) => name)).toEqual(['indicator', 'B']);
	});
	test('there is one empty row to go on with, and it counts for nothing', () => {
		const form = filled();
		expect(form.draft.rows).toHaveLength(12);
		expect(form.kit?.conversion).toEqual(houseSyringeKit.conversion);
		form.keepRowOpen();
		expect(form.draft.rows).toHaveLength(12);
		form.setRows([
			{ at: '1', value: '0' },
			{ at: '0', value: '16' }
		]);
		expect(form.draft.rows).toHaveLength(3);
	});
	test('cautions of one’s own stand beside the usual ones', () => {
		const form = filled();
		expect(form.ownCautions).toBe('');
		form.ownCautions = 'Keep it cool.\nNot for wells.';
		const [usual] = usualCautions.alkalinity;
		if (!usual) throw new Error('a usual caution expected');
		form.setCaution(usual, false);
		flushSync();
		expect(form.kit?.hazards).toEqual([
			...usualCautions.alkalinity.slice(1),
			'Keep it cool.',
			'Not for wells.'
		]);
	});

	test('another analyte brings its unit and its cautions, and leaves what was typed', () => {
		const form = filled();
		form.setCaution('Mine to say.', true);
		form.setAnalyte('hardness');
		expect(form.draft).toMatchObject({ unit: 'mmol/L', isForDifference: true, capacityMl: '1' });
		expect(form.draft.hazards).toEqual(['Mine to say.', ...usualCautions.hardness]);
		expect(form.draft.hazards.join(' ')).toMatch(/ammonia/);
		expect(form.kit?.byDifference).toEqual({ gives: 'magnesium', less: 'calcium' });
		form.setAnalyte('calcium', 'mmol/kg');
		expect(form.draft).toMatchObject({ unit: 'mmol/kg', isForDifference: false });
		expect(form.draft.hazards.join(' ')).toMatch(/eye protection.*adults/);
		expect(form.draft.hazards.join(' ')).not.toMatch(/ammonia|acid/);
		expect(form.kit?.byDifference).toBeUndefined();
		// The cautions of one analyte are nobody's own words beside another.
		expect(form.ownCautions).toBe('Mine to say.');
	});
});
