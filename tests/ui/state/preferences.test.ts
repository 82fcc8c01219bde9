import { beforeEach, describe, expect, test } from 'vitest';
import { countingWays, Preferences, units } from '../../../src/lib/ui/state';

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
		expect([unit, counting]).toEqual([units[0], countingWays[0]]);
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
