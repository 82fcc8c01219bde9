import { expect, it } from 'vitest';
import { dryBurette, fillBurette, runBurette } from '../../src/lib/glassware';

it('gives nothing before it is filled', () => {
	expect(runBurette(dryBurette(10, 0.2), 1).liquidMl).toBe(0);
});

it('lets the air of its jet go first: the level falls and no titrant comes', () => {
	const run = runBurette(fillBurette(dryBurette(10, 0.2), 0), 1);
	expect(run.airMl).toBeCloseTo(0.2, 12);
	expect(run.liquidMl).toBeCloseTo(0.8, 12);
	expect(run.burette.levelMl).toBeCloseTo(1, 12);
	expect(runBurette(run.burette, 1).liquidMl).toBeCloseTo(1, 12);
});

it('holds no more than its scale says', () => {
	const full = { ...fillBurette(dryBurette(10, 0), 0) };
	expect(runBurette(full, 50).liquidMl).toBe(10);
	expect(fillBurette(full, -3).levelMl).toBe(-0.5);
	expect(fillBurette(full, 40).levelMl).toBe(10);
});
