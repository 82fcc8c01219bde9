import { describe, expect, test } from 'vitest';
import { reduce } from '../../../src/lib/bench';
import { houseKitOf } from '../../../src/lib/kits';
import { asLeft } from '../../../src/lib/ui/bench/as-left';
import { stepTitle } from '../../../src/lib/ui/bench/stations';
import { madeUpScenario, PlayedRun } from '../played-run';

const calcium = madeUpScenario({ kitId: 'house-calcium', checks: [], kind: 'drill' });

describe('what was added before the titrant', () => {
	test('is named and counted each by itself', () => {
		const [titration] = new PlayedRun(calcium).run.titrations;
		if (!titration) throw new Error('no titration');
		const dosed = ['base', 'base', 'indicator'].reduce(
			(bench, reagentId, i) =>
				reduce(bench, { type: 'reagent.dose', reagentId }, bench.at + 500 * (i + 1)),
			titration.bench
		);
		expect(asLeft({ ...titration, bench: dosed })).toMatch(
			/strong base in \(2\), indicator powder in \(1\)\.$/
		);
	});

	test.each([
		['house-calcium', ['Base', 'Indicator']],
		['house-hardness', ['Buffer', 'Indicator']],
		['house-syringe', ['Indicator']]
	])('is headed by what it is: %s', (kitId, titles) => {
		const kit = houseKitOf(kitId);
		const [titration] = new PlayedRun(madeUpScenario({ kitId, checks: [], kind: 'drill' })).run
			.titrations;
		const doses = titration?.steps.filter(({ kind }) => kind === 'dose') ?? [];
		expect(doses.map((step) => stepTitle(step, kit))).toEqual(titles);
	});
});
