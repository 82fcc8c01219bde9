import { beforeEach, describe, expect, test } from 'vitest';
import { unitsOf, type Analyte } from '../../../src/lib/kits';
import { countingWays, Preferences, unitsShown } from '../../../src/lib/ui/state';

describe('settings', () => {
	beforeEach(() => localStorage.clear());
	const stored = (text: string) => {
		localStorage.setItem('halfdrop.preferences', text);
		return new Preferences();
	};

	test('at first a wait says that it is over, and no voice speaks', () => {
		const { sound, vibration, spoken, counting, leftHanded, keysOn, unit } = new Preferences();
		expect({ sound, vibration, spoken, leftHanded, keysOn }).toEqual({
			sound: true,
			vibration: true,
			spoken: false,
			leftHanded: false,
			keysOn: true
		});
		expect([unit, counting]).toEqual([unitsShown.alkalinity[0], countingWays[0]]);
	});

	test('outlive the page', () => {
		const now = new Preferences();
		now.unit = 'meq/L';
		now.spoken = true;
		now.counting = 'pedal';
		const later = new Preferences();
		expect([later.unit, later.spoken, later.counting, later.sound]).toEqual([
			'meq/L',
			true,
			'pedal',
			true
		]);
	});

	test('each analyte has a unit of its own; one chosen when there was but one is that of alkalinity', () => {
		const then = stored('{"unit":"meq/L","sound":false}');
		expect([then.unit, then.unitFor('alkalinity'), then.unitFor('calcium'), then.sound]).toEqual([
			'meq/L',
			'meq/L',
			'mg/L',
			false
		]);
		then.chooseUnit('calcium', 'mmol/L');
		then.chooseUnit('alkalinity', 'ppm CaCO3');
		const later = new Preferences();
		expect([later.unit, later.unitFor('calcium'), later.unitFor('hardness')]).toEqual([
			'ppm CaCO3',
			'mmol/L',
			'mmol/L'
		]);
		// Calcium has no degrees of carbonate hardness: that alone falls back.
		const damaged = stored('{"units":{"calcium":"dKH","magnesium":"mmol/kg"}}');
		expect([damaged.unitFor('calcium'), damaged.unitFor('magnesium')]).toEqual(['mg/L', 'mmol/kg']);
	});

	test('the unit of a kit leads with that kit, until another is chosen', () => {
		const read = stored('{}');
		expect(read.unitFor('calcium', 'mmol/L')).toBe('mmol/L');
		expect(read.unitFor('calcium')).toBe('mg/L');
		read.chooseUnit('calcium', 'mg/L');
		expect(read.unitFor('calcium', 'mmol/L')).toBe('mg/L');
	});

	test('offers the units that the kits room knows, in its order', () => {
		for (const analyte of Object.keys(unitsShown) as Analyte[])
			expect([...unitsShown[analyte]]).toEqual(unitsOf(analyte));
	});

	test('a damaged one falls back alone', () => {
		const read = stored('{"unit":"furlong","sound":"loud","leftHanded":true,"keysOn":false}');
		expect([read.unit, read.sound, read.leftHanded, read.keysOn]).toEqual([
			'dKH',
			true,
			true,
			false
		]);
	});

	test.each(['null', '[]', '3', 'not JSON'])('%s in their place is as good as nothing', (text) => {
		const { unit, keysOn } = stored(text);
		expect([unit, keysOn]).toEqual(['dKH', true]);
	});
});
