import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { houseKitOf, stepsOf, type Kit } from '../../src/lib/kits';
import { anyKit } from './any-kit';
import { plainKit } from './house';

const idsOf = (kit: Kit) => stepsOf(kit).map((step) => step.id);

describe('the steps of a kit', () => {
	it('with a syringe and two sample volumes: all of them, in the order of the hands', () => {
		expect(idsOf(houseKitOf('house-syringe'))).toEqual([
			'choose',
			'rinse-sampler',
			'rinse-vial',
			'measure',
			'dose-indicator',
			'mix-indicator',
			'fill',
			'titrate',
			'read'
		]);
	});
	it('with a dropper and a line on the vial: no choice, no sample syringe, no filling', () => {
		expect(idsOf(houseKitOf('house-dropper'))).toEqual([
			'rinse-vial',
			'measure',
			'dose-indicator',
			'mix-indicator',
			'titrate',
			'read'
		]);
	});
	it('with a burette: filled to 0, read at its level', () => {
		const steps = stepsOf(houseKitOf('house-burette'));
		expect(steps).toContainEqual({ id: 'fill', kind: 'fill', by: 'burette', toMl: 0 });
		expect(steps.at(-1)).toEqual({ id: 'read', kind: 'read', what: 'level' });
	});
	it('fills a syringe to the numeral of its full mark, whichever way the scale runs', () => {
		const fillOf = (kit: Kit) => stepsOf(kit).find((step) => step.kind === 'fill');
		expect(fillOf(plainKit(5, 1, 'down'))).toMatchObject({ toMl: 1 });
		expect(fillOf(plainKit(5, 1, 'up'))).toMatchObject({ toMl: 0 });
	});
	it('gives each reagent its dose, and mixing and waiting only where the leaflet asks for them', () => {
		const base = plainKit(5, 1);
		const kit: Kit = {
			...base,
			reagents: [
				{
					id: 'buffer',
					name: 'buffer',
					role: 'buffer',
					dose: { amount: 0.5, unit: 'mL' },
					mixSeconds: 0,
					waitSeconds: 60
				},
				{
					id: 'dye',
					name: 'dye',
					role: 'indicator',
					dose: { amount: 2, unit: 'drop' },
					mixSeconds: 10,
					waitSeconds: 0
				}
			]
		};
		const between = idsOf(kit).slice(2, -3);
		expect(between).toEqual(['dose-buffer', 'wait-buffer', 'dose-dye', 'mix-dye']);
		expect(stepsOf(kit)).toContainEqual({
			id: 'wait-buffer',
			kind: 'wait',
			seconds: 60,
			reagentId: 'buffer'
		});
	});
	it('without reagents go from the sample to the filling', () => {
		expect(idsOf(plainKit(5, 1))).toEqual(['rinse-vial', 'measure', 'fill', 'titrate', 'read']);
	});
	it('never bear one id twice, whatever the leaflet says, and end with titrating and reading', () => {
		fc.assert(
			fc.property(anyKit, (kit) => {
				const ids = idsOf(kit);
				expect(new Set(ids).size).toBe(ids.length);
				expect(ids.slice(-2)).toEqual(['titrate', 'read']);
				expect(ids.filter((id) => id.startsWith('dose-'))).toHaveLength(kit.reagents.length);
				expect(ids.includes('fill')).toBe(kit.delivery.by !== 'dropper');
				expect(ids.includes('choose')).toBe(kit.sample.volumes.length > 1);
			})
		);
	});
	it('of the house kits bear no id twice', () => {
		for (const id of ['house-syringe', 'house-dropper', 'house-burette']) {
			const ids = idsOf(houseKitOf(id));
			expect(new Set(ids).size).toBe(ids.length);
		}
	});
});
