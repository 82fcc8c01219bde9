import * as fc from 'fast-check';
import { expect } from 'vitest';
import type { Point } from '../../src/lib/metrology';

/** Points about a rising line, with scatter, never degenerate. */
export const points = fc
	.array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: -40, max: 40 })), {
		minLength: 4,
		maxLength: 12
	})
	.map((steps) =>
		steps.map(([x, off], i): Point => ({ x: i * 10 + x / 10, y: i * 12 + off / 10 + x / 5 }))
	);
export const factor = fc.double({ min: 0.1, max: 20, noNaN: true });
export const shift = fc.double({ min: -50, max: 50, noNaN: true });
/** Alike but for rounding; `scale` is the size of what was taken from each other on the way. */
export const close = (found: number, expected: number, scale = 1) =>
	expect(Math.abs(found - expected)).toBeLessThan(1e-8 * Math.max(1, Math.abs(expected), scale));
