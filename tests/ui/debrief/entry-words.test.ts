import { describe, expect, test } from 'vitest';
import type { BenchAction } from '../../../src/lib/bench';
import { houseSyringeKit } from '../../../src/lib/kits';
import type { RunEvent } from '../../../src/lib/procedure';
import { eventWords } from '../../../src/lib/ui/debrief/entry-words';

const bench = (action: BenchAction): RunEvent => ({ in: 'bench', titration: 0, action });
const words = (event: RunEvent) => eventWords(event, houseSyringeKit);

describe('eventWords', () => {
	test.each<[BenchAction, string]>([
		[
			{ type: 'sample.choose', volumeId: 'fine' },
			`Sample size: ${houseSyringeKit.sample.volumes[1]?.name}`
		],
		[{ type: 'ware.rinse', ware: 'vial', with: 'tap' }, 'Vial rinsed with tap water'],
		[
			{ type: 'sample.draw', toMl: 6, nose: 'inAir' },
			'Sample drawn to 6.00 mL, nose out of the water'
		],
		[{ type: 'reagent.dose', reagentId: 'indicator' }, 'A dose of indicator'],
		[{ type: 'tip.fit', firm: false }, 'Tip put on, loosely'],
		[{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }, 'Plunger moved to 1.00'],
		[{ type: 'eye.move', degrees: -10 }, 'Eye 10° below the mark'],
		[{ type: 'eye.move', degrees: 0 }, 'Eye level with the mark'],
		[{ type: 'lamp.set', lamp: 'red' }, 'Red lamp']
	])('%j', (action, text) => expect(words(bench(action))).toBe(text));

	test('marks are told as they were typed', () => {
		expect(
			words({
				in: 'walk',
				titration: 0,
				event: { type: 'marks.read', marks: { sealMl: 0.38, lineMl: 0.2 } }
			})
		).toBe('Read: seal 0.38, liquid line 0.20');
	});

	test('a conclusion is told with how sure it was', () => {
		expect(
			words({
				in: 'inquiry',
				event: { type: 'conclusion.given', conclusion: 'reagent', sure: 95 }
			})
		).toBe('Concluded: The reagent, very sure');
	});
});
