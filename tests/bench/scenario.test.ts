import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/lib/bench';

const good = {
	format: 1,
	id: 'case-one',
	kind: 'case',
	title: 'A Tuesday',
	opening: 'You test every week. Today it is lower.',
	minutes: 8,
	kitId: 'house-syringe',
	truth: { water: { alkalinityDkh: 8 } },
	checks: [{ check: 'repeatFull', minutes: 6 }]
};
const parse = (data: unknown) => parseScenario(JSON.stringify(data), 'case-one.json');

describe('a scenario file', () => {
	it('may leave out whatever is ordinary', () => {
		const scenario = parse(good);
		expect(scenario.truth.water.salinity).toBe(35);
		expect(scenario.truth.light).toBe('white');
		expect(scenario.coaching).toBe('corrected');
		expect(scenario.earlier).toEqual([]);
	});

	it.each([
		[
			{ ...good, truth: { water: { alkalinityDkh: 80 } } },
			'truth.water.alkalinityDkh: expected a number of at most 40; found 80'
		],
		[
			{ ...good, truth: { water: {} } },
			'truth.water.alkalinityDkh: expected a number; found nothing'
		],
		[{ ...good, kind: 'quiz' }, 'kind: expected one of "drill", "case"; found "quiz"'],
		[{ ...good, title: '' }, 'title: expected something that is not empty; found ""'],
		[{ ...good, id: 'Acid Too Strong' }, 'id: expected lower-case letters, digits and hyphens'],
		[{ ...good, minutes: 0 }, 'minutes: expected a number of at least 1; found 0'],
		[{ ...good, minutes: 'ten' }, 'minutes: expected a number; found "ten"'],
		[
			{ ...good, checks: [{ check: 'repeatFull', minutes: 6 }, { check: 'askAFriend' }] },
			'checks[1].check: expected one of "repeatFull", "repeatQuick", "largerSample", "freshLot", "freshSample", "secondMethod", "reference", "salinity", "alkalinity", "calcium", "magnesium"; found "askAFriend"'
		],
		[{ ...good, colour: 'red' }, 'the whole file: has no field named colour'],
		[
			{ ...good, truth: { water: { alkalinityDkh: 8 }, titrant: { strenghtFactor: 1 } } },
			'truth.titrant: has no field named strenghtFactor'
		]
	])('that is wrong is told by file, field and what was expected (%#)', (data, said) => {
		expect(() => parse(data)).toThrow(`case-one.json: ${said}`);
	});

	it('with two faults tells both', () => {
		expect(() => parse({ ...good, title: '', minutes: 99 })).toThrow(/title: .*\n.*minutes: /);
	});

	it('that is no JSON is told by name', () => {
		expect(() => parseScenario('{', 'broken.json')).toThrow(/^broken\.json: expected JSON/);
	});
});
