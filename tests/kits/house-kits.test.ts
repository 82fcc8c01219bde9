import { describe, expect, it } from 'vitest';
import {
	houseKitOf,
	houseCalciumKit,
	houseHardnessKit,
	houseKits,
	houseKitsFor,
	impliedTitrantStrength,
	KitSchema,
	valueFromMark
} from '../../src/lib/kits';

describe.each(houseKits)('$name', (kit) => {
	it('is a whole kit, invented and saying so, with hazards and with its bottles known', () => {
		expect(KitSchema.parse(kit)).toEqual(kit);
		expect(kit.invented).toBe(true);
		expect(kit.hazards.join(' ')).toMatch(/eyes[^]*children[^]*tank/);
		for (const { id } of kit.reagents)
			expect(kit.contents?.dyes[id] ?? kit.contents?.phReagents?.[id]).toBeDefined();
	});

	it('holds a titrant of the strength that its conversion implies, to two hundredths', () => {
		// Calcium the furthest: 2 % of it goes down with the magnesium hydroxide and is made good by the leaflet.
		const implied = impliedTitrantStrength(kit);
		const held = kit.contents?.titrant.molPerL ?? Number.NaN;
		expect(Math.abs(implied / held - 1)).toBeLessThan(kit.analyte === 'calcium' ? 0.021 : 0.015);
	});
});

describe.each(houseKitsFor('alkalinity'))('$name', (kit) => {
	it('puts the dyes into the vial at the depth its end colour was found with', () => {
		for (const { id, dose } of kit.reagents) {
			expect(kit.contents?.dyes[id]?.map((dye) => dye.dyeId)).toEqual([
				'bromocresolGreen',
				'methylRed'
			]);
			const doseMl = dose.amount * (dose.unitMl ?? Number.NaN);
			const sampleMl = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
			const [green, red] = kit.contents?.dyes[id] ?? [];
			const inVial = (molPerL = Number.NaN) => (molPerL * doseMl * 1e6) / (sampleMl + doseMl);
			// 14.2 and 7.4 µmol/L, this project's choice for 2 cm of light path.
			expect(Math.abs(inVial(green?.molPerL) - 14.2)).toBeLessThan(0.2);
			expect(Math.abs(inVial(red?.molPerL) - 7.4)).toBeLessThan(0.1);
		}
	});

	it('reaches from 2 to 15 dKH with one filling', () => {
		const { delivery } = kit;
		const most = (usedMl: number) =>
			delivery.by === 'dropper'
				? { drops: Math.round(usedMl / delivery.dropMl) }
				: { markMl: delivery.by === 'syringe' ? delivery.capacityMl - usedMl : usedMl };
		const capacityMl = delivery.by === 'dropper' ? 40 * delivery.dropMl : delivery.capacityMl;
		expect(valueFromMark(kit, most(0)).value).toBeLessThan(2);
		expect(valueFromMark(kit, most(capacityMl)).value).toBeGreaterThan(15);
	});
});

describe('the house kits with EDTA', () => {
	it('are for calcium, and for calcium and magnesium together, from which magnesium is found', () => {
		expect(houseKitsFor('calcium')).toEqual([houseCalciumKit]);
		expect(houseKitsFor('hardness')).toEqual([houseHardnessKit]);
		expect(houseHardnessKit.byDifference).toEqual({ gives: 'magnesium', less: 'calcium' });
		expect(houseCalciumKit.hazards.join(' ')).toMatch(/eye protection[^]*no child/);
		expect(houseHardnessKit.hazards.join(' ')).toMatch(/ammonia[^]*window/);
	});

	it('reach seawater of 5 % more salt; that for both needs a second filling for an ordinary tank', () => {
		const fillingsFor = ({ conversion, delivery }: typeof houseCalciumKit, value: number) => {
			if (conversion.kind !== 'perMl' || delivery.by !== 'syringe') throw new Error('per mL');
			return (value - conversion.offset) / conversion.valuePerMl / delivery.capacityMl;
		};
		// 10.522 mmol/L of calcium and 54.050 of magnesium at salinity 35: Millero et al. 2008, from memory.
		expect(fillingsFor(houseCalciumKit, 1.05 * 10.522 * 40.078)).toBeLessThan(1);
		expect(fillingsFor(houseHardnessKit, 10.522 + 54.05)).toBeGreaterThan(1.5);
		expect(fillingsFor(houseHardnessKit, 1.05 * (10.522 + 54.05))).toBeLessThan(2);
	});
});

it('a kit that is not there is named with those that are', () => {
	expect(() => houseKitOf('another')).toThrow(
		new RangeError(
			'kitId must be one of house-syringe, house-dropper, house-burette, house-calcium, house-hardness; found another'
		)
	);
});

it.each([
	[{ unit: 'ppm' }, 'unit'],
	[{ endPoint: { startColour: 'teal', endColour: '', holdsSeconds: 25 } }, 'endPoint.endColour'],
	[{ sample: { volumes: [], measuredIn: 'syringe' } }, 'sample.volumes'],
	[{ conversion: { kind: 'rows', column: 'mark', rows: [{ at: 0, value: 1 }] } }, 'conversion.rows']
])('a kit that is wrong is told by the field (%#)', (wrong, field) => {
	const parsed = KitSchema.safeParse({ ...houseKitOf('house-syringe'), ...wrong });
	expect(parsed.error?.issues.map((issue) => issue.path.join('.'))).toEqual([field]);
});
