import { describe, expect, it } from 'vitest';
import {
	draftOfMeans,
	offeredWords,
	readMeans,
	type MeansDraft
} from '../../../src/lib/ui/decision/means-form';
import type { Analyte } from '../../../src/lib/kits';
import { phChangeWords } from '../../../src/lib/ui/decision/plan-words';
import {
	bandFields,
	correctionFields,
	readTank,
	textsOf
} from '../../../src/lib/ui/decision/tank-fields';
import { salinityField } from '../../../src/lib/ui/decision/salinity-field';
import type { Means } from '../../../src/lib/observation';

describe('change of pH in words', () => {
	it.each([
		[-0.052, 'about −0.05'],
		[-0.014, 'hardly any'],
		[0.016, 'about +0.02'],
		[0.0881, 'about +0.09'],
		[0.199, 'about +0.20']
	])('%s: %s', (change, words) => {
		expect(phChangeWords(change)).toBe(words);
	});
});

describe('blanks of the tank', () => {
	const fields = [
		...bandFields('dKH', 'alkalinity'),
		salinityField,
		...correctionFields('dKH', 'alkalinity')
	];
	it('take comma and point, and leave out what is empty', () => {
		expect(readTank({ waterL: '180,5', salinity: '35.1', ph: ' ' }, fields)).toEqual({
			tank: { waterL: 180.5, salinity: 35.1 },
			problems: {},
			instead: {},
			notes: {}
		});
	});
	it.each([
		['1.026', 34.5, /1.026 at 25 °C is a salinity of about 34\.5, and is taken as that/],
		['1,0264', 35, /salinity of about 35\.0/],
		['1025', 33.2, /specific gravity: 1.025 at 25 °C/]
	])(
		'a specific gravity of %s is taken as a salinity of %s, and it is said',
		(typed, taken, words) => {
			const read = readTank({ salinity: typed }, fields);
			expect(read.tank).toEqual({ salinity: taken });
			expect(read.problems).toEqual({});
			expect(read.notes.salinity).toMatch(words);
		}
	);
	it.each([
		['53', /5 and 45.*conductivity in mS\/cm/],
		['1.002', /5 and 45.*specific gravity: 1.002 at 25 °C is a salinity of about 2\.\d\.$/],
		['0', /^The salinity of a tank lies between 5 and 45; the ocean has 35; found 0\.$/],
		['3', /found 3\.$/],
		['90', /found 90\.$/],
		['-35', /found .35\.$/],
		['abc', /abc/]
	])('a salinity of %s is not taken', (salinity, words) => {
		const read = readTank({ salinity }, fields);
		expect(read.tank).toEqual({});
		expect(read.notes).toEqual({});
		expect(read.problems.salinity).toMatch(words);
	});
	it('a temperature in Fahrenheit is offered in Celsius, and a ± larger than half is not taken', () => {
		const read = readTank(
			{ temperatureC: '78', waterL: '200', waterExpandedUncertaintyL: '150', ph: '81' },
			fields
		);
		expect(read.tank).toEqual({ waterL: 200 });
		expect(read.instead).toEqual({ temperatureC: '25.6' });
		expect(read.problems.waterExpandedUncertaintyL).toMatch(/half of the water; found 150/);
		expect(read.problems.ph).toMatch(/between 6 and 10; found 81/);
	});
	it('what is known stands in them as it would be typed, and reads back as it was', () => {
		const tank = { waterL: 180.5, bandLow: 7, bandHigh: 8.5, consumptionPerDay: 0.35 };
		expect(readTank(textsOf(tank, fields), fields).tank).toEqual(tank);
	});
	it('what cannot be is not known', () => {
		const { tank, problems } = readTank({ waterL: '0', salinity: '35' }, fields);
		expect(tank).toEqual({ salinity: 35 });
		expect(problems.waterL).toBe('A system holds from 1 to 100000 litres; found 0.');
	});
	it('speak in the unit of the tank', () => {
		const inPpm = correctionFields('ppm CaCO3', 'alkalinity');
		expect(inPpm.find(({ name }) => name === 'maxRisePerDay')?.hint).toBe(
			'Left empty: 9. Never more than 18.'
		);
	});
});

describe('means', () => {
	const empty = draftOfMeans(null);
	const read = (more: Partial<MeansDraft>) => readMeans({ ...empty, ...more }, 'dKH', 'alkalinity');
	it.each<[Analyte, string[]]>([
		['alkalinity', ['bicarbonate', 'carbonate', 'limewater', 'product', 'waterChange']],
		['calcium', ['calciumChloride', 'product', 'waterChange']],
		['magnesium', ['magnesiumChloride', 'magnesiumSulfate', 'product', 'waterChange']],
		['hardness', []]
	])('of %s are those that raise it, and new water alone brings it down', (analyte, offered) => {
		expect(Object.keys(offeredWords(analyte, false))).toEqual(offered);
		expect(Object.keys(offeredWords(analyte, true))).toEqual(['waterChange']);
	});
	it.each<Means>([
		{ by: 'bicarbonate', purity: 0.99 },
		{ by: 'carbonate', hydrate: 'decahydrate', purity: 1 },
		{ by: 'limewater' },
		{ by: 'calciumChloride', hydrate: 'dihydrate', purity: 0.96 },
		{ by: 'magnesiumChloride', hydrate: 'hexahydrate', purity: 1 },
		{ by: 'magnesiumSulfate', hydrate: 'heptahydrate', purity: 0.995 },
		{ by: 'product', risePerMlIn100L: 0.14 },
		{ by: 'waterChange', newValue: 8.4, share: 0.15 }
	])('$by reads back as it was', (means) => {
		expect(read(draftOfMeans(means))).toEqual({ means, problems: {} });
	});
	it('are none while their strength is not known', () => {
		expect(read({ by: 'product' }).means).toBeNull();
		expect(read({ by: 'bicarbonate', purityPercent: '120' }).problems.purityPercent).toBe(
			'Purity lies between 1 and 100 %; found 120.'
		);
		expect(read({ by: 'carbonate', purityPercent: '99' }).problems.hydrate).toMatch(/Say which/);
		// One that another powder has does not count.
		const other = { by: 'calciumChloride', hydrate: 'decahydrate', purityPercent: '99' } as const;
		expect(read(other)).toMatchObject({
			means: null,
			problems: { hydrate: expect.stringMatching(/Say which/) }
		});
	});
});
