import { describe, expect, it } from 'vitest';
import { cleanPlan, planOf, runHands, type Plan } from '../../src/lib/bench';
import type { Kit } from '../../src/lib/kits';
import type { Slip } from '../../src/lib/observation';
import {
	benchWith,
	buretteKit,
	dropperKit,
	slipOf,
	syringeKit,
	truthOf,
	valueOf,
	worked
} from './house';

function readBack(kit: Kit, plan: Partial<Plan>, slips: Slip[] = [], seed = 1): Plan {
	const run = worked(kit, plan, truthOf(), seed);
	return planOf(run.state, { marks: run.marks, value: run.value }, slips);
}

describe('the way of working read back from a titration', () => {
	it.each([syringeKit, dropperKit, buretteKit])('$name: of clean hands is the clean one', (kit) => {
		const { swirlMs, volumeId, ...rest } = readBack(kit, {});
		expect(volumeId).toBe('normal');
		expect(Math.abs(swirlMs - 2000)).toBeLessThan(400);
		const { swirlMs: _ms, volumeId: _id, ...clean } = cleanPlan;
		expect(rest).toEqual(clean);
	});

	it.each<[Partial<Plan>, Slip[]]>([
		[{ fillBy: 'line' }, [slipOf('mixedMarks')]],
		[{ fillBy: 'line', readBy: 'line' }, []],
		[{ tipFitted: 'after' }, [slipOf('tipFittedLate')]],
		[{ tipFitted: 'loose' }, [slipOf('tipLoose')]],
		[{ airDrawnMl: 0.05 }, [slipOf('airExpelled')]],
		[{ sampleOffMl: -0.4 }, [slipOf('sampleOff')]],
		[{ sampleAirMl: 0.3 }, [slipOf('sampleOff')]],
		[{ rinseSampler: 'purified' }, [slipOf('wareNotRinsed')]],
		[{ rinseVial: 'tap' }, [slipOf('wareNotRinsed')]],
		[{ extraIndicator: 2 }, [slipOf('indicatorOff')]],
		[{ dropsPastEnd: 3 }, [slipOf('overshot')]],
		[{ dropsPastEnd: -3 }, [slipOf('stoppedAtFlash')]],
		[{ swirlMs: 0 }, [slipOf('swirledOddly')]],
		[{ scaleReversed: true }, [slipOf('scaleReversed')]],
		[{ readOff: 0.1 }, [slipOf('misread')]]
	])('keeps what was done differently (%#)', (plan, slips) => {
		const found = readBack(syringeKit, plan, slips);
		for (const [field, value] of Object.entries(plan)) {
			const read = found[field as keyof Plan];
			if (field === 'readOff') expect(Math.abs(Number(read) - Number(value))).toBeLessThan(0.0101);
			else if (field === 'dropsPastEnd')
				expect(Math.abs(Number(read) - Number(value))).toBeLessThan(1.01);
			else if (typeof value === 'number') expect(read).toBeCloseTo(value, 3);
			else expect(read).toBe(value);
		}
	});

	it('done again makes the same mistake in fresh water', () => {
		const plan = readBack(syringeKit, { fillBy: 'line' }, [slipOf('mixedMarks')]);
		const again = runHands(
			benchWith(syringeKit, truthOf({ water: { alkalinityDkh: 10 } }), 8),
			plan
		);
		expect(Math.abs(valueOf(syringeKit, again) - (10 - 0.17 * 16))).toBeLessThan(0.35);
	});

	it('takes the hand of a dropper as it was held', () => {
		const plan = readBack(dropperKit, { tiltDegrees: 40, squeezedHard: true });
		expect(plan.tiltDegrees).toBe(40);
		expect(plan.squeezedHard).toBe(true);
		expect(readBack(dropperKit, { rinseVial: 'purified' }).rinseVial).toBe('purified');
	});
});
