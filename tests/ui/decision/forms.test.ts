import { describe, expect, it } from 'vitest';
import { draftOfMeans, readMeans, type MeansDraft } from '../../../src/lib/ui/decision/means-form';
import { phChangeWords } from '../../../src/lib/ui/decision/plan-words';
import {
	bandFields,
	correctionFields,
	readTank,
	salinityField,
	textsOf
} from '../../../src/lib/ui/decision/tank-fields';
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
			problems: {}
		});
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
	it.each<Means>([
		{ by: 'bicarbonate', purity: 0.99 },
		{ by: 'carbonate', hydrate: 'decahydrate', purity: 1 },
		{ by: 'limewater' },
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
	});
});
