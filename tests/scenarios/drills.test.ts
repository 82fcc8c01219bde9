import { describe, expect, it } from 'vitest';
import { observe } from '../../src/lib/bench';
import { houseKitOf, valueFromMark } from '../../src/lib/kits';
import { startRun } from '../../src/lib/procedure';
import { drills } from './house';

const firstSteps = {
	measure: ['choose', 'rinse'],
	dose: ['dose'],
	fill: ['fill'],
	titrate: ['titrate'],
	read: ['read']
};

describe.each(drills)('$file', ({ scenario }) => {
	const kit = houseKitOf(scenario.kitId);
	const from = scenario.from ?? 'measure';
	const until = scenario.until ?? 'read';
	const titration = startRun({ kit, seed: 3 }, scenario).titrations[0];
	if (!titration) throw new Error('a run begins with a titration');
	const { bench, steps } = titration;

	it('asks for its own part of the leaflet and no more', () => {
		expect(firstSteps[from]).toContain(steps[0]?.kind);
		expect(steps.some((step) => step.kind === 'read')).toBe(until === 'read');
	});

	it('lays the bench out for that part: what comes before is done, what it is about is not', () => {
		const isSampled = bench.contents !== null;
		const isDosed = Object.values(bench.doses).some((doses) => doses > 0);
		const isFilled =
			bench.delivery.by === 'dropper' ||
			(bench.delivery.by === 'syringe'
				? bench.delivery.syringe.liquidMl > 0.5
				: (bench.delivery.burette.levelMl ?? 99) < 0.1);
		const isTitrated = bench.drops.length > 0;
		const order = ['measure', 'dose', 'fill', 'titrate', 'read'];
		const isAfter = (part: string) => order.indexOf(from) > order.indexOf(part);
		expect({ isSampled, isDosed, isTitrated }).toEqual({
			isSampled: isAfter('measure'),
			isDosed: isAfter('dose'),
			isTitrated: isAfter('titrate')
		});
		if (from === 'titrate') expect(isFilled).toBe(true);
	});
});

it('the drill of reading has a mark that is worth what its water holds', () => {
	const drill = drills.find(({ scenario }) => scenario.from === 'read')?.scenario;
	if (!drill) throw new Error('no drill begins at reading');
	const kit = houseKitOf(drill.kitId);
	const bench = startRun({ kit, seed: 3 }, drill).titrations[0]?.bench;
	if (bench?.delivery.by !== 'syringe') throw new Error('no syringe to read');
	const { value } = valueFromMark(kit, { markMl: bench.delivery.syringe.sealMl });
	expect(Math.abs(value - drill.truth.water.alkalinityDkh)).toBeLessThan(0.3);
});

it('the drill of light begins in a light that deceives', () => {
	const drill = drills.find(({ scenario }) => scenario.skills.includes('wrongLight'))?.scenario;
	if (!drill) throw new Error('no drill is about light');
	const bench = startRun({ kit: houseKitOf(drill.kitId), seed: 3 }, drill).titrations[0]?.bench;
	expect(bench && observe(bench, 0).lamp).toBe('blue');
});
