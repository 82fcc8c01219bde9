import { describe, expect, it } from 'vitest';
import {
	houseKitOf,
	houseKits,
	impliedTitrantStrength,
	KitSchema,
	valueFromMark
} from '../../src/lib/kits';

describe.each(houseKits)('$name', (kit) => {
	it('is a whole kit, invented and saying so, with hazards and with its bottles known', () => {
		expect(KitSchema.parse(kit)).toEqual(kit);
		expect(kit.invented).toBe(true);
		expect(kit.hazards.join(' ')).toMatch(/eyes[^]*children[^]*tank/);
		for (const reagent of kit.reagents)
			expect(kit.contents?.dyes[reagent.id]?.map((dye) => dye.dyeId)).toEqual([
				'bromocresolGreen',
				'methylRed'
			]);
	});

	it('holds an acid of the strength that its conversion implies, to a hundredth and a half', () => {
		const implied = impliedTitrantStrength(kit);
		const held = kit.contents?.titrant.molPerL ?? Number.NaN;
		expect(Math.abs(implied / held - 1)).toBeLessThan(0.015);
	});

	it('puts the dyes into the vial at the depth its end colour was found with', () => {
		for (const { id, dose } of kit.reagents) {
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

it('a kit that is not there is named with those that are', () => {
	expect(() => houseKitOf('another')).toThrow(
		new RangeError(
			'kitId must be one of house-syringe, house-dropper, house-burette; found another'
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
