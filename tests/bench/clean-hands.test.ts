import { describe, expect, it } from 'vitest';
import { calibrateKit, createBench, runHands, cleanPlan, type Plan } from '../../src/lib/bench';
import {
	houseCalciumKit,
	houseHardnessKit,
	houseKits,
	valueFromMark,
	type Kit
} from '../../src/lib/kits';
import { buretteKit, dropperKit, meanOver, syringeKit, truthOf, worked } from './house';

describe('the house kits', () => {
	it.each([syringeKit, dropperKit, buretteKit])(
		'$name: the printed conversion is what a clean hand finds on this bench',
		(kit) => {
			const found = calibrateKit(kit);
			// Ordinary seawater bends the straight line by a hundredth of a degree at most.
			expect(found.worstError).toBeLessThan(0.012);
			for (const { value: alkalinityDkh, usedMl } of found.points) {
				const printed = valueFromMark(
					kit,
					kit.delivery.by === 'dropper'
						? { drops: usedMl / kit.delivery.dropMl }
						: { markMl: kit.delivery.by === 'syringe' ? 1 - usedMl : usedMl }
				).value;
				expect(Math.abs(printed - alkalinityDkh)).toBeLessThan(0.02);
			}
		}
	);
});

describe('the house kits with EDTA', () => {
	it.each([
		[houseCalciumKit, 0.02, 0.1],
		[houseHardnessKit, 0.03, 0.03]
	])(
		'$name: the printed conversion is what a clean hand finds on this bench',
		(kit, bend, printing) => {
			const found = calibrateKit(kit);
			expect(found.worstError).toBeLessThan(bend);
			for (const { value, usedMl } of found.points) {
				const most = kit.delivery.by === 'syringe' ? kit.delivery.capacityMl : 0;
				const refilledMl = Math.max(0, usedMl - most);
				const markMl = most - (usedMl - refilledMl);
				const printed = valueFromMark(kit, { markMl, refilledMl }).value;
				expect(Math.abs(printed - value)).toBeLessThan(printing);
			}
		}
	);
});

describe('hands without a mistake, in ordinary water', () => {
	const alkalinities = [5, 6.5, 8, 9.5, 11, 13];

	it.each([syringeKit, buretteKit])('$name: end within 0.3 dKH of the truth', (kit) => {
		for (const alkalinityDkh of alkalinities)
			for (let seed = 1; seed <= 6; seed++) {
				const { value } = worked(kit, {}, truthOf({ water: { alkalinityDkh } }), seed);
				expect(Math.abs(value - alkalinityDkh)).toBeLessThan(0.3);
			}
	});

	it('with the dropper, whose drop is 0.6 dKH, end within a drop of it', () => {
		for (const alkalinityDkh of alkalinities)
			for (let seed = 1; seed <= 6; seed++) {
				const { value } = worked(dropperKit, {}, truthOf({ water: { alkalinityDkh } }), seed);
				expect(Math.abs(value - alkalinityDkh)).toBeLessThan(0.6);
			}
	});

	it.each([syringeKit, buretteKit, dropperKit])('$name: lean to neither side', (kit) => {
		// 60 runs over alkalinities that fall anywhere between two drops.
		const mean = meanOver(60, (seed) => {
			const alkalinityDkh = 6 + seed * 0.0917;
			return worked(kit, {}, truthOf({ water: { alkalinityDkh } }), seed).value - alkalinityDkh;
		});
		// A drop or a half division is even: sd about 0.29 of it; three standard errors of 60.
		const coarseDkh = kit === dropperKit ? 0.6 : kit === syringeKit ? 0.336 : 0.092;
		expect(Math.abs(mean)).toBeLessThan(coarseDkh * 0.5 * (3 / Math.sqrt(60)));
	});

	it('do not depend on salinity, temperature or pH by more than a few hundredths', () => {
		for (const water of [{ salinity: 32 }, { salinity: 38 }, { temperatureC: 20 }, { ph: 7.8 }]) {
			const mean = meanOver(
				20,
				(seed) =>
					worked(buretteKit, {}, truthOf({ water }), seed).value -
					worked(buretteKit, {}, truthOf(), seed).value
			);
			expect(Math.abs(mean)).toBeLessThan(0.08);
		}
	});
});

it('hands that go on to another volume of sample report the same water', () => {
	const fine = worked(syringeKit, { volumeId: 'fine' }, truthOf(), 2);
	expect(fine.sampleVolumeMl).toBe(10);
	expect(Math.abs(fine.value - 8)).toBeLessThan(0.3);
});

it('deeds of hands, given to a fresh bench again, lead to the same state', () => {
	const bench = createBench({ kit: syringeKit, truth: truthOf(), seed: 5 });
	const run = runHands(bench, cleanPlan);
	const again = runHands(bench, cleanPlan);
	expect(again.actions).toStrictEqual(run.actions);
	expect(again.state).toStrictEqual(run.state);
	expect(run.actions.length).toBeGreaterThan(30);
});

it('hands say whether an end came: not without dye, nor in a buffer far too low, nor where it ran out', () => {
	const isFound = (
		kit: Kit,
		plan: Partial<Plan> = {},
		different: Parameters<typeof truthOf>[0] = {}
	) => worked(kit, plan, truthOf(different), 2).isEndFound;
	for (const kit of houseKits) {
		expect(isFound(kit)).toBe(true);
		expect(isFound(kit, { dropsPastEnd: -2 })).toBe(true);
		// As many spoons or drops too few as the leaflet asks for.
		expect(isFound(kit, { extraIndicator: -5 })).toBe(false);
	}
	const noBuffer = { reagents: { ammoniaBuffer: { phOff: -2 } } };
	expect(isFound(houseHardnessKit, {}, noBuffer)).toBe(false);
	expect(isFound(houseHardnessKit, { dropsPastEnd: -2 }, noBuffer)).toBe(false);
	// A millilitre reaches to 15.7 dKH.
	expect(isFound(syringeKit, {}, { water: { alkalinityDkh: 25 } })).toBe(false);
});
