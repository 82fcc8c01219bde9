import { describe, expect, test } from 'vitest';
import { CircumstancesSchema, type Circumstances } from '$lib/observation';
import {
	circumstancesOf,
	draftOf,
	withRemembered
} from '../../../src/lib/ui/test/before/before-form';
import { salinityWords, saidOf, warningsOf } from '../../../src/lib/ui/test/before/before-words';

const noon = new Date(2026, 4, 5, 12, 0).getTime();
const typed = (fields: Partial<ReturnType<typeof draftOf>>) =>
	circumstancesOf({ ...draftOf({}), ...fields }, noon);

const everything: Circumstances = {
	water: 'tank',
	takenWhere: 'middle of the tank',
	takenAtEpochMs: new Date(2026, 4, 5, 11, 30).getTime(),
	hoursSinceDose: 2.5,
	hoursSinceLightsOn: 4,
	dosed: 'soda ash, 20 mL a day',
	dosingRuns: 'yes',
	tester: 'Ada',
	light: 'white',
	whiteCard: true,
	temperatureC: 25.3,
	temperatureBy: 'glass thermometer',
	salinity: { value: 1.0264, unit: 'specificGravity', sampleC: 25, referenceC: 25 },
	salinityBy: 'hydrometer',
	lot: 'B 12',
	lotOpenedAtEpochMs: new Date(2026, 3, 1).getTime()
};

describe('what is said before the number', () => {
	test('nothing typed is nothing said', () => {
		expect(typed({})).toEqual({ circumstances: {}, problems: {} });
	});

	test('what was said fills the fields, and they say the same again', () => {
		const again = circumstancesOf(draftOf(everything), noon);
		expect(again).toEqual({ circumstances: everything, problems: {} });
		expect(CircumstancesSchema.safeParse(again.circumstances).success).toBe(true);
	});

	test('decimal comma and point are both understood', () => {
		expect(typed({ temperature: '25,3' }).circumstances.temperatureC).toBe(25.3);
		expect(typed({ temperature: ' 25.3 ' }).circumstances.temperatureC).toBe(25.3);
		expect(
			typed({ salinity: '1,026', salinityUnit: 'specificGravity' }).circumstances.salinity?.value
		).toBe(1.026);
	});

	test('what cannot be is named at its field, and the rest still stands', () => {
		const { circumstances, problems } = typed({
			salinity: '350',
			salinityUnit: 'PSU',
			temperature: 'warm',
			hoursSinceDose: '-1',
			tester: 'Ada'
		});
		expect(circumstances).toEqual({ tester: 'Ada' });
		expect(problems.salinity).toContain('between 0 and 60; found 350');
		expect(problems.temperature).toContain('“warm” is no number');
		expect(problems.hoursSinceDose).toContain('found -1');
	});

	test('degrees Fahrenheit are recognised: 77 °F are 25 °C', () => {
		// (77 − 32) / 1.8 = 25, by the definition of the scale.
		expect(typed({ temperature: '77' }).problems.temperature).toContain('25.0 °C');
		expect(typed({ temperature: '170' }).problems.temperature).not.toContain('°F');
	});

	test('a specific gravity told by its last figures is asked about', () => {
		const { problems } = typed({ salinity: '1026', salinityUnit: 'specificGravity' });
		expect(problems.salinity).toContain('1.026');
	});

	test('a salinity without its unit is not guessed', () => {
		const { circumstances, problems } = typed({ salinity: '35' });
		expect(circumstances.salinity).toBeUndefined();
		expect(problems.salinityUnit).toContain('unit');
	});

	test('temperatures belong to a specific gravity only', () => {
		expect(
			typed({ salinity: '35', salinityUnit: 'PSU', sampleC: '25' }).circumstances.salinity
		).toEqual({ value: 35, unit: 'PSU' });
	});

	test('water is not taken, nor a bottle opened, in the time to come', () => {
		const { problems } = typed({ takenAt: '2026-05-05T13:00', lotOpened: '2026-05-06' });
		expect(problems.takenAt).toContain('still to come');
		expect(problems.lotOpened).toContain('still to come');
		expect(typed({ takenAt: '2026-05-05T12:00', lotOpened: '2026-05-05' }).problems).toEqual({});
	});
});

describe('a known solution', () => {
	const whole = {
		water: 'reference',
		solutionNominal: '8,0',
		solutionBand: '0.1',
		solutionUnit: 'dKH',
		solutionMatrix: 'sodiumChloride',
		solutionName: ' March '
	} as const;
	const reference = {
		nominal: 8,
		expandedUncertainty: 0.1,
		unit: 'dKH',
		matrix: 'sodiumChloride',
		name: 'March'
	} as const;

	test('is said with all that a check of the kit needs, and fills the fields again', () => {
		const { circumstances, problems } = typed(whole);
		expect(problems).toEqual({});
		expect(circumstances).toEqual({ water: 'reference', reference });
		expect(CircumstancesSchema.parse(circumstances)).toEqual(circumstances);
		expect(circumstancesOf(draftOf(circumstances), noon).circumstances).toEqual(circumstances);
		expect(saidOf.water(circumstances)).toBe('known solution, 8 ± 0.1 dKH, March');
	});

	test('need not be said; half of it is asked for, field by field, and is not kept', () => {
		expect(typed({ water: 'reference' })).toEqual({
			circumstances: { water: 'reference' },
			problems: {}
		});
		const { circumstances, problems } = typed({ water: 'reference', solutionNominal: '8' });
		expect(circumstances).toEqual({ water: 'reference' });
		expect(Object.keys(problems).sort()).toEqual([
			'solutionBand',
			'solutionMatrix',
			'solutionUnit'
		]);
	});

	test.each(['0', '-8', 'eight'])('holds no %s', (solutionNominal) => {
		const { circumstances, problems } = typed({ ...whole, solutionNominal });
		expect(circumstances.reference).toBeUndefined();
		expect(problems.solutionNominal).toMatch(/above 0|no number/);
	});

	test('is not said of another water, whatever stands in the fields', () => {
		for (const water of ['tank', 'topOff', ''] as const) {
			const { circumstances, problems } = typed({ ...whole, water, solutionBand: 'x' });
			expect(circumstances.reference).toBeUndefined();
			expect(problems).toEqual({});
		}
	});
});

describe('same as last time', () => {
	test('takes what stays, never a reading, an hour or a state', () => {
		const { circumstances } = circumstancesOf(withRemembered(draftOf({}), everything), noon);
		expect(circumstances).toEqual({
			takenWhere: 'middle of the tank',
			dosed: 'soda ash, 20 mL a day',
			tester: 'Ada',
			temperatureBy: 'glass thermometer',
			salinityBy: 'hydrometer',
			lot: 'B 12',
			lotOpenedAtEpochMs: everything.lotOpenedAtEpochMs
		});
	});

	test('keeps the unit of the salinity instrument ready, without a value', () => {
		const draft = withRemembered(draftOf({}), everything);
		expect([draft.salinityUnit, draft.sampleC, draft.referenceC, draft.salinity]).toEqual([
			'specificGravity',
			'25',
			'25',
			''
		]);
	});

	test('never writes over what stands there, nor gives a new bottle an old date', () => {
		const draft = withRemembered(draftOf({ tester: 'Bo', lot: 'C 1' }), everything);
		expect([draft.tester, draft.lot, draft.lotOpened]).toEqual(['Bo', 'C 1', '']);
	});
});

describe('words', () => {
	test('blue and dim light are warned of, white is not', () => {
		expect(warningsOf({ light: 'blue' }).map(({ id }) => id)).toEqual(['light']);
		expect(warningsOf({ light: 'dim' }).map(({ id }) => id)).toEqual(['light']);
		expect(warningsOf({ light: 'white' })).toEqual([]);
	});

	test('a dose within the hour is warned of', () => {
		expect(warningsOf({ hoursSinceDose: 0.5 }).map(({ id }) => id)).toEqual(['dose']);
		expect(warningsOf({ hoursSinceDose: 1 })).toEqual([]);
	});

	test('a specific gravity says both temperatures', () => {
		expect(
			salinityWords({ value: 1.0264, unit: 'specificGravity', sampleC: 25, referenceC: 20 })
		).toBe('specific gravity 1.0264 (25/20 °C)');
		expect(salinityWords({ value: 53.1, unit: 'mS/cm' })).toBe('53.1 mS/cm');
	});

	test('a fold says what is in it', () => {
		expect(saidOf.hands(everything)).toBe('Ada, white light, white card');
		expect(saidOf.bottle({})).toBe('');
	});
});
