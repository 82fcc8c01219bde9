import { expect, test } from 'vitest';
import { ScenarioSchema } from '../../../src/lib/bench';
import { beginTitration } from '../../../src/lib/procedure/titration-run';
import { houseKitOf } from '../../../src/lib/kits';
import { purposeWords } from '../../../src/lib/ui/bench/purpose-words';
import { madeUpScenario } from '../played-run';

function wordsOf(kitId: string, opens: 'titrant' | 'allBottles') {
	const scenario = ScenarioSchema.parse({
		...madeUpScenario(),
		kitId,
		checks: [
			{ check: 'freshLot', minutes: 9, opens },
			{ check: 'repeatFull', minutes: 9 }
		]
	});
	const kit = houseKitOf(kitId)!;
	return purposeWords(scenario, beginTitration({ kit, scenario, seed: 1 }, 2, 'freshLot', 0));
}

test('fresh bottles are named: all of the kit, or the titrant alone', () => {
	expect(wordsOf('house-syringe', 'titrant')).toMatch(/titrant from a fresh bottle\.$/);
	expect(wordsOf('house-syringe', 'allBottles')).toMatch(/opened anew: titrant and indicator\.$/);
	const ofCalcium = wordsOf('house-calcium', 'allBottles');
	for (const bottle of ['titrant', 'base', 'indicator']) expect(ofCalcium).toContain(bottle);
	expect(ofCalcium).not.toContain('from a fresh bottle');
});
