import { describe, expect, it, test } from 'vitest';
import { valueFromMark } from '../../src/lib/kits';
import type { WalkEvent } from '../../src/lib/observation';
import { fillingTrapIn, slipsIn } from '../../src/lib/procedure';
import { dropperKit, kindsIn, syringeKit, timeline } from './house';
import { titrated } from './titrated';

const T = 0.17;
const byLine = { sealMl: 1.17, lineMl: 1 };
const bySeal = { sealMl: 1, lineMl: 0.83 };

const drops = (n: number): WalkEvent[] =>
	Array.from({ length: n }, () => ({ type: 'titrant.fell', drops: 1 }));
const drawn = (at: object): WalkEvent => ({ type: 'titrant.drawn', ...at });
const read = (marks: object): WalkEvent => ({ type: 'marks.read', marks });
const reported = (value: number): WalkEvent => ({ type: 'value.reported', value, unit: 'dKH' });

const slips = (events: WalkEvent[]) =>
	slipsIn(syringeKit, [], timeline(events)).filter((slip) => slip.kind === 'mixedMarks');

describe('the moment the syringe is filled', () => {
	it('until the line stands at full is seen at once, with seal, line and cushion', () => {
		expect(fillingTrapIn(syringeKit, byLine)).toMatchObject({
			sealMl: 1.17,
			lineMl: 1,
			unit: 'dKH'
		});
		expect(fillingTrapIn(syringeKit, byLine)?.cushionMl).toBeCloseTo(T, 9);
	});

	it('costs the cushion in the kit’s own unit', () => {
		// Independent of the trap: the leaflet's values for the mark as it would be read, and as it is.
		const seen = valueFromMark(syringeKit, { markMl: 0.5 }).value;
		const meant = valueFromMark(syringeKit, { markMl: 0.5 - T }).value;
		expect(fillingTrapIn(syringeKit, byLine)?.costValue).toBeCloseTo(meant - seen, 6);
		// In a larger sample the same air costs less.
		expect(fillingTrapIn(syringeKit, byLine, 10)?.costValue).toBeCloseTo(
			((meant - seen) * 6) / 10,
			6
		);
	});

	it('offers both ways out: the seal to full, or the line at the end as well', () => {
		expect(fillingTrapIn(syringeKit, byLine)?.waysOut).toEqual({
			refillSealToMl: 1,
			readLineFromMl: 1
		});
	});

	it.each([
		['by the seal', bySeal],
		['with no air between (purged tip-up: both at full)', { sealMl: 1, lineMl: 1 }],
		['short by both', { sealMl: 0.9, lineMl: 0.73 }],
		['by nobody knows what', {}],
		['by the seal, the line not looked at', { sealMl: 1 }]
	])('%s is no trap', (_how, at) => {
		expect(fillingTrapIn(syringeKit, at)).toBeNull();
	});

	it('on a scale that counts up, full is 0 and the trap is the same', () => {
		const { delivery } = syringeKit;
		if (delivery.by !== 'syringe') throw new Error('not a syringe');
		const up = {
			...syringeKit,
			delivery: { ...delivery, scale: 'up' as const },
			conversion: { kind: 'perMl' as const, valuePerMl: 16, offset: -0.3 }
		};
		const trap = fillingTrapIn(up, { sealMl: -T, lineMl: 0 });
		expect(trap?.waysOut).toEqual({ refillSealToMl: 0, readLineFromMl: 0 });
		expect(trap?.costValue).toBeCloseTo(T * 16, 9);
		expect(fillingTrapIn(up, { sealMl: 0, lineMl: T })).toBeNull();
	});

	it('does not exist for a bottle that drops', () => {
		expect(fillingTrapIn(dropperKit, byLine)).toBeNull();
	});
});

describe('the slip of mixed marks', () => {
	it('is provisional from the filling on, and settled at reading', () => {
		expect(slips([drawn(byLine)])).toMatchObject([{ provisional: true, variant: 'filledByLine' }]);
		expect(slips([drawn(byLine), ...drops(20)])).toMatchObject([{ provisional: true }]);
		expect(slips([drawn(byLine), ...drops(20), read({ sealMl: 0.75 })])).toMatchObject([
			{ provisional: false, entryId: 'e21' }
		]);
	});

	it('goes when the seal is set back to full before the first drop', () => {
		expect(slips([drawn(byLine), drawn(bySeal)])).toEqual([]);
	});

	it('goes when the line is read at the end', () => {
		expect(slips([drawn(byLine), ...drops(20), read({ lineMl: 0.58 })])).toEqual([]);
	});

	it('with both marks read is open until the value says which one it was made of', () => {
		const both = [drawn(byLine), ...drops(20), read({ sealMl: 0.75, lineMl: 0.58 })];
		expect(slips(both)).toMatchObject([{ provisional: true }]);
		const byTheLine = Number(valueFromMark(syringeKit, { markMl: 0.58 }).value.toFixed(1));
		const byTheSeal = Number(valueFromMark(syringeKit, { markMl: 0.75 }).value.toFixed(1));
		expect(slips([...both, reported(byTheLine)])).toEqual([]);
		expect(slips([...both, reported(byTheSeal)])).toMatchObject([
			{ provisional: false, variant: 'filledByLine' }
		]);
		expect(kindsIn(syringeKit, timeline([...both, reported(byTheLine)]))).toEqual([]);
	});

	it('goes when counted from where the seal really stood', () => {
		const used = valueFromMark(syringeKit, { markMl: 0.75, startMarkMl: 1.17 }).value;
		const events = [
			drawn(byLine),
			...drops(20),
			read({ sealMl: 0.75 }),
			reported(Number(used.toFixed(1)))
		];
		expect(kindsIn(syringeKit, timeline(events))).toEqual([]);
	});

	it('the other way round: filled by the seal, read by the line', () => {
		const [slip] = slips([drawn(bySeal), ...drops(20), read({ lineMl: 0.41 })]);
		expect(slip).toMatchObject({ provisional: false, variant: 'readByLine' });
		expect(slip?.sizeMl).toBeCloseTo(T, 9);
	});

	it('filled beside the full mark and counted from it all the same', () => {
		const events = [drawn({ sealMl: 0.95, lineMl: 0.78 }), ...drops(20), read({ sealMl: 0.53 })];
		const [slip] = slips(events);
		expect(slip).toMatchObject({ provisional: false, variant: 'besideFull' });
		expect(slip?.sizeMl).toBeCloseTo(0.05, 9);
	});
});

/** At the bench: the four ways to fill and read. Common practice, no source; sizes are geometry. */
test.each<[string, object, string[]]>([
	['seal and seal', { fillBy: 'seal', readBy: 'seal' }, []],
	['line and line', { fillBy: 'line', readBy: 'line' }, []],
	['line, then seal', { fillBy: 'line', readBy: 'seal' }, ['mixedMarks']],
	['seal, then line', { fillBy: 'seal', readBy: 'line' }, ['mixedMarks']]
])('filled and read by %s', (_how, plan, expected) => {
	const [titration] = titrated(syringeKit, { plan: { ...plan } }).run.titrations;
	expect(kindsIn(syringeKit, titration!.events)).toEqual(expected);
});
