import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { observe, reduce, type BenchAction, type Seen, type Truth } from '../../src/lib/bench';
import type { Kit } from '../../src/lib/kits';
import { benchWith, buretteKit, dropperKit, syringeKit, truthOf } from './house';

/** Everything that is seen but the colours of the liquid. */
function withoutColour(seen: Seen): unknown {
	const { bulk, plume, ...vial } = seen.vial;
	expect([bulk, plume].every(({ r, g, b }) => [r, g, b].every((c) => c >= 0 && c <= 1))).toBe(true);
	return { ...seen, vial, comparison: seen.comparison === null ? null : 'there' };
}

const deeds: Record<Kit['delivery']['by'], BenchAction[]> = {
	syringe: [
		{ type: 'tip.fit', firm: true },
		{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' },
		{ type: 'titrant.purge', sealMl: 0.9 }
	],
	dropper: [
		{ type: 'dropper.tilt', degrees: 20 },
		{ type: 'dropper.squeeze', hard: true }
	],
	burette: [
		{ type: 'burette.fill', levelMl: 0 },
		{ type: 'burette.runOut', volumeMl: 0.3 }
	]
};
const common: BenchAction[] = [
	{ type: 'ware.rinse', ware: 'vial', with: 'sample' },
	{ type: 'reagent.dose', reagentId: 'indicator' },
	{ type: 'flow.give', size: 'drop' },
	{ type: 'flow.give', size: 'half' },
	{ type: 'flow.start' },
	{ type: 'flow.stop' },
	{ type: 'swirl.start' },
	{ type: 'swirl.stop' },
	{ type: 'tip.touchOff' },
	{ type: 'comparison.make' },
	{ type: 'lamp.set', lamp: 'red' }
];
const measured = (kit: Kit): BenchAction[] => {
	const volumeMl = kit.sample.volumes[0]?.volumeMl ?? 5;
	return kit.sample.measuredIn === 'syringe'
		? [{ type: 'sample.draw', toMl: volumeMl }, { type: 'sample.pour' }]
		: [{ type: 'sample.fillToLine', levelMl: volumeMl }];
};

/** Worlds that differ in what nobody can see but by the colour. */
const pairs: [string, Truth, Truth][] = [
	['alkalinity', truthOf(), truthOf({ water: { alkalinityDkh: 9.6 } })],
	['strength of the acid', truthOf(), truthOf({ titrant: { strengthFactor: 1.09 } })],
	['age of the indicator', truthOf(), truthOf({ indicator: { strengthFactor: 0.6 } })],
	['pH of the water', truthOf(), truthOf({ water: { ph: 7.7 } })],
	[
		'a trace of base in the vial',
		truthOf({ ware: { vialLeftMl: 0.001 } }),
		truthOf({ ware: { vialLeftMl: 0.001, vialLeftMeqPerL: 8000 } })
	]
];

for (const kit of [syringeKit, dropperKit, buretteKit])
	it.each(pairs)(
		`${kit.name}: twins that differ in %s show the same but for the colour`,
		(_name, one, other) => {
			const deed = fc.constantFrom(...deeds[kit.delivery.by], ...common, ...measured(kit));
			fc.assert(
				fc.property(
					fc.array(fc.tuple(deed, fc.integer({ min: 0, max: 3000 })), { maxLength: 15 }),
					(script) => {
						let [left, right] = [benchWith(kit, one), benchWith(kit, other)];
						let at = 0;
						for (const [each, waitMs] of [
							...measured(kit).map((d) => [d, 100] as const),
							...script
						]) {
							at += waitMs;
							left = reduce(left, each, at);
							right = reduce(right, each, at);
						}
						const [a, b] = [observe(left, at + 700), observe(right, at + 700)];
						expect(rounded(withoutColour(b))).toStrictEqual(rounded(withoutColour(a)));
					}
				),
				{ numRuns: 12 }
			);
		}
	);

/** Volumes as far as a picture could show them: 10 nanolitres. */
function rounded(seen: unknown): unknown {
	return JSON.parse(
		JSON.stringify(seen, (_key, value: unknown) =>
			typeof value === 'number' ? Number(value.toFixed(5)) : value
		)
	);
}
