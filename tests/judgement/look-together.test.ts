import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookTogether, type ConsistencyInput, type FindingId } from '../../src/lib/judgement';
import { convertValue, unitsOf, type Analyte, type Unit } from '../../src/lib/kits';

const mg = (value: number, expandedUncertainty: number) =>
	({ value, expandedUncertainty, unit: 'mg/L' }) as const;
const dkh = (value: number, expandedUncertainty: number) =>
	({ value, expandedUncertainty, unit: 'dKH' }) as const;
const found = (input: ConsistencyInput, id: FindingId) =>
	lookTogether(input).findings.find((each) => each.id === id);

describe('against the sea', () => {
	// Reference seawater of salinity 35 at 25 °C: 421.7 mg/L of calcium, 1313.7 of magnesium (Millero and
	// others 2008, Deep-Sea Res. I 55:50, times density 1.02334; from memory).
	const sea = { calcium: mg(421.7, 15), magnesium: mg(1313.7, 50), salinity: { value: 35 } };
	it('stands as the sea does', () => {
		expect(found(sea, 'seaProportion')).toMatchObject({
			says: 'nothingOdd',
			because: 'Against the sea of salinity 35: calcium about the same, magnesium about the same.'
		});
	});
	it('both low alike is a question to the salinity, with the one that it would be', () => {
		const low = { ...sea, calcium: mg(350, 15), magnesium: mg(1080, 50) };
		const finding = found(low, 'seaProportion');
		expect(finding?.says).toBe('odd');
		expect(finding?.sentence).toMatch(/lower than in the sea by about 17\s%.*about 29/);
	});
	it('one low and one high is no matter of salinity', () => {
		const finding = found(
			{ ...sea, calcium: mg(330, 15), magnesium: mg(1450, 50) },
			'seaProportion'
		);
		expect(finding).toMatchObject({
			says: 'odd',
			sentence: expect.stringMatching(/not the whole of it/)
		});
	});
	it('wide tests say nothing odd of the same values', () => {
		const wide = { ...sea, calcium: mg(350, 90), magnesium: mg(1150, 250) };
		expect(found(wide, 'seaProportion')?.says).toBe('nothingOdd');
	});
	// Outside 33 to 37 nothing is added before the salinity is put right: judgement.
	it.each([
		[32.5, true],
		[33, false],
		[37, false],
		[37.5, true]
	])('a salinity of %s is put right first: %s', (value, isFirst) => {
		const { findings } = lookTogether({ ...sea, salinity: { value } });
		expect(findings[0]?.id === 'salinity').toBe(isFirst);
		if (isFirst)
			expect(findings[0]?.sentence).toMatch(
				/Put that right first.*whatever is dissolved moves with it/
			);
	});
	it('alkalinity moves with the salinity and is held against no sea, and the words say no more', () => {
		const { salinity: _, ...rest } = sea;
		const off = { ...rest, salinity: { value: 30 } };
		const { findings, limits } = lookTogether(off);
		// Nothing that is found of salinity and sea depends on the alkalinity.
		for (const value of [5, 8, 12])
			expect(lookTogether({ ...off, alkalinity: dkh(value, 0.5) }).findings).toEqual(findings);
		expect(limits.join(' ')).toMatch(/alkalinity is not held against the sea/);
		// Evaporation moves alkalinity as well: nothing may say that it does not follow.
		const words = [...limits, ...findings.map(({ sentence }) => sentence)].join(' ');
		expect(words).not.toMatch(/does not follow|all three/);
	});
	it('is not looked at without the salinity', () => {
		const { salinity: _, ...rest } = sea;
		expect(found(rest, 'seaProportion')).toBeUndefined();
	});
});

describe('an error of calcium in magnesium by difference', () => {
	// 60 mg/L of calcium too much are 1.497 mmol/L, and so 36.4 mg/L of magnesium too little.
	const both = {
		calcium: mg(421.7 + 60, 25),
		magnesium: mg(1313.7 - 36.4, 60),
		salinity: { value: 35 }
	};
	it('is named where calcium was taken off', () => {
		expect(found({ ...both, isMagnesiumByDifference: true }, 'oneErrorInBoth')).toMatchObject({
			says: 'odd',
			because: expect.stringMatching(/Calcium 60 mg\/L above the sea, magnesium 36 mg\/L below/)
		});
	});
	it('cannot be where magnesium was found by itself', () => {
		expect(found(both, 'oneErrorInBoth')).toBeUndefined();
	});
});

describe('used up together', () => {
	const used = (alkalinity: number, calcium: number): ConsistencyInput => ({
		usedUp: { alkalinity: dkh(alkalinity, 0.5), calcium: mg(calcium, 20) }
	});
	// 1 dKH of skeleton takes 0.35665 / 2 × 40.078 = 7.147 mg/L of calcium.
	it('cannot tell below about three dKH with tests of ± 20 mg/L', () => {
		expect(found(used(2, 5), 'useInProportion')).toMatchObject({
			says: 'cannotTell',
			because: expect.stringMatching(/^2\.0 dKH × 7\.15 = 14 mg\/L of calcium/)
		});
		expect(found(used(6, 40), 'useInProportion')?.says).toBe('nothingOdd');
	});
	it('alkalinity that went without calcium is odd', () => {
		const finding = found(used(6, 2), 'useInProportion');
		expect(finding).toMatchObject({ says: 'odd', sentence: expect.stringMatching(/nitrate/i) });
	});
	it.each([
		[0.1, -150, /^Calcium rose.*dosed than believed, or a test of calcium/],
		[-3, -150, /^Calcium rose/],
		[-6, 0, /^Alkalinity rose, and calcium does not/],
		[1, 60, /^More calcium went/],
		[6, 2, /^Alkalinity went without its calcium/],
		// Within its ± nobody can say that calcium rose.
		[6, -10, /^Alkalinity went without its calcium/]
	] as const)(
		'%d dKH and %d mg/L used up: the words follow the way',
		(alkalinity, calcium, words) => {
			const finding = found(used(alkalinity, calcium), 'useInProportion');
			expect(finding).toMatchObject({ says: 'odd', sentence: expect.stringMatching(words) });
			expect(finding?.sentence).not.toMatch(/Less or more/);
			if (/rose/.test(finding!.sentence)) expect(finding!.sentence).not.toMatch(/nitrate/i);
		}
	);
});

describe('magnesium for holding calcium', () => {
	it.each([
		[1050, 60, 'odd'],
		[1180, 60, 'cannotTell'],
		[1350, 60, 'nothingOdd']
	] as const)('%s ± %s: %s', (value, expanded, says) => {
		expect(found({ magnesium: mg(value, expanded) }, 'magnesiumForHolding')?.says).toBe(says);
	});
});

describe('saturation of aragonite', () => {
	const tank = {
		alkalinity: dkh(8, 0.5),
		calcium: mg(420, 15),
		salinity: { value: 35, expandedUncertainty: 1 },
		ph: { value: 8.1, expandedUncertainty: 0.15 }
	};
	it('has a range that the pH makes wide', () => {
		const { saturation } = lookTogether(tank);
		if (!saturation) throw new Error('saturation is not there');
		const surer = lookTogether({ ...tank, ph: { value: 8.1, expandedUncertainty: 0.02 } });
		expect(saturation.low).toBeLessThan(saturation.value);
		expect(saturation.high / saturation.low).toBeGreaterThan(1.5);
		expect(surer.saturation!.high / surer.saturation!.low).toBeLessThan(1.3);
		expect(saturation.sentence).toMatch(/not measured/);
	});
	it('is not there without pH', () => {
		const { ph: _, ...rest } = tank;
		expect(lookTogether(rest).saturation).toBeNull();
	});
});

describe('whatever the values', () => {
	const known = (analyte: Analyte, low: number, high: number, base: Unit) =>
		fc
			.record({
				value: fc.double({ min: low, max: high, noNaN: true }),
				expandedUncertainty: fc.double({ min: low / 100, max: low / 5, noNaN: true })
			})
			.map((each) => ({ ...each, unit: base, analyte }));
	const anyTank = fc.record({
		alkalinity: known('alkalinity', 5, 13, 'dKH'),
		calcium: known('calcium', 300, 550, 'mg/L'),
		magnesium: known('magnesium', 900, 1700, 'mg/L'),
		salinity: fc.record({ value: fc.double({ min: 28, max: 40, noNaN: true }) }),
		ph: fc.record({ value: fc.double({ min: 7.7, max: 8.5, noNaN: true }) }),
		isMagnesiumByDifference: fc.boolean()
	});
	type Tank = typeof anyTank extends fc.Arbitrary<infer T> ? T : never;
	const inUnits = (tank: Tank, units: Partial<Record<Analyte, Unit>>) => {
		const turned = (known: Tank['calcium']) => {
			const unit = units[known.analyte] ?? known.unit;
			const to = (value: number) => convertValue(value, known.unit, unit, known.analyte);
			return { value: to(known.value), expandedUncertainty: to(known.expandedUncertainty), unit };
		};
		return {
			...tank,
			alkalinity: turned(tank.alkalinity),
			calcium: turned(tank.calcium),
			magnesium: turned(tank.magnesium)
		};
	};
	it('units do not matter, and nothing is called right or certain', () => {
		const units = fc.record({
			alkalinity: fc.constantFrom(...unitsOf('alkalinity')),
			calcium: fc.constantFrom(...unitsOf('calcium')),
			magnesium: fc.constantFrom(...unitsOf('magnesium'))
		});
		fc.assert(
			fc.property(anyTank, units, (tank, chosen) => {
				const own = lookTogether(inUnits(tank, {}));
				const other = lookTogether(inUnits(tank, chosen));
				expect(other.findings.map(({ id, says }) => [id, says])).toEqual(
					own.findings.map(({ id, says }) => [id, says])
				);
				expect(other.saturation!.value / own.saturation!.value).toBeCloseTo(1, 9);
				const said = own.findings.map(({ sentence }) => sentence).join(' ');
				// A salinity is put right; no value is called so.
				expect(said.replace('Put that right first', '')).not.toMatch(
					/\b(correct|right|certain|safe|normal)\b/i
				);
				expect(own.limits.length).toBeGreaterThan(2);
			})
		);
	});
	it('figures that no tank has are refused by name', () => {
		expect(() => lookTogether({ calcium: mg(-3, 5) })).toThrow(/calcium\.value/);
		expect(() => lookTogether({ calcium: mg(400, 0) })).toThrow(/calcium\.expandedUncertainty/);
		expect(() => lookTogether({ salinity: { value: 1.026 } })).toThrow(/salinity\.value/);
		expect(() => lookTogether({ ph: { value: 81 } })).toThrow(/ph\.value/);
	});
});
