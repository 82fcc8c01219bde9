import fc from 'fast-check';
import type { Step } from '$lib/kits';
import type { WalkEvent, WalkEventType } from '$lib/observation';

type Fields = Record<string, readonly unknown[]>;

const mark = [0, 0.02, 0.35, 0.5, 0.83, 1, 1.17];
const seconds = [0, 3, 30];
const lamps = ['white', 'red', 'blue', 'dim'];

/** Everything that hands may leave out of an event, with things they may say there. */
export const optionalFields: { [Type in WalkEventType]: Fields } = {
	'sample.chosen': {},
	'vial.rinsed': { ware: ['vial', 'sampler'], with: ['sample', 'purified', 'tap'] },
	'sample.measured': {
		volumeMl: [5, 6, 10],
		strayWaterMl: [0, 0.4],
		strayInMeasureMl: [0, 0.2],
		airMl: [0, 0.1]
	},
	'reagent.added': { amount: [0.5, 1, 3, 5] },
	'vial.swirled': { seconds },
	'wait.over': {},
	'tip.fitted': { firm: [true, false], liquidInside: [true, false] },
	'tip.wiped': { hangingMl: [0, 0.01] },
	'titrant.drawn': {
		sealMl: mark,
		lineMl: mark,
		levelMl: [0, 0.4, 3],
		tip: ['off', 'fitted', 'loose'],
		tipAirMl: [0, 0.05],
		hangingMl: [0, 0.01],
		drawnAgainMl: [0, 0.6],
		before: [{}, { sealMl: 0.1 }, { lineMl: 0.05 }, { levelMl: 8 }, { sealMl: 1.2, lineMl: 1 }]
	},
	'filling.done': {},
	'titrant.fell': {
		drops: [1, 2, 20],
		volumeMl: [0.02, 0.4],
		intoPlume: [true, false],
		tiltDegrees: [0, 40],
		squeezedHard: [true, false]
	},
	'drop.touchedOff': { volumeMl: [0.01] },
	'lamp.changed': {},
	'colour.turned': {},
	'colour.faded': {},
	'colour.stayed': {
		secondsSinceDrop: seconds,
		swirledSince: [true, false],
		hangingMl: [0, 0.015],
		lamp: lamps
	},
	'titrant.spent': {},
	'marks.read': { eyeDegrees: [0, 20] },
	'value.reported': {},
	'step.skipped': {},
	'step.done': {},
	'walk.abandoned': {}
};

const marks: Fields = {
	sealMl: [...mark, 3],
	lineMl: mark,
	levelMl: [0, 3.6, 9.9, 40],
	drops: [0, 1, 14, 31]
};

/** The first of each, in every combination of said and not said. */
function everyCombination(fields: Fields): Record<string, unknown>[] {
	return Object.entries(fields).reduce<Record<string, unknown>[]>(
		(all, [name, values]) => all.flatMap((each) => [each, { ...each, [name]: values.at(-1) }]),
		[{}]
	);
}

/** What each event must say at least. */
function basesOf(type: WalkEventType, steps: readonly Step[]): Record<string, unknown>[] {
	switch (type) {
		case 'sample.chosen':
			return steps.flatMap((step) =>
				step.kind === 'choose' ? step.volumeIds.map((volumeId) => ({ volumeId })) : []
			);
		case 'reagent.added':
			return steps.flatMap((step) => (step.kind === 'dose' ? [{ reagentId: step.reagentId }] : []));
		case 'lamp.changed':
			return lamps.map((lamp) => ({ lamp }));
		case 'marks.read':
			return everyCombination(marks).map((each) => ({ marks: each }));
		case 'value.reported':
			return [{ value: 8, unit: 'dKH' }];
		case 'step.done':
		case 'step.skipped':
			return steps.map(({ id }) => ({ stepId: id }));
		default:
			return [{}];
	}
}

const types = Object.keys(optionalFields) as WalkEventType[];

/** Every event with its optional fields said and left out in every combination. */
export function partialEvents(steps: readonly Step[]): WalkEvent[] {
	return types.flatMap((type) =>
		basesOf(type, steps).flatMap((base) =>
			everyCombination(optionalFields[type]).map(
				(said) => ({ type, ...base, ...said }) as unknown as WalkEvent
			)
		)
	);
}

const said = (fields: Fields) =>
	fc.record(
		Object.fromEntries(
			Object.entries(fields).map(([name, values]) => [name, fc.constantFrom(...values)])
		),
		{ requiredKeys: [] }
	);

/** An event of a type as somebody may note it. */
function noted(type: WalkEventType, steps: readonly Step[]): fc.Arbitrary<WalkEvent> | null {
	if (type === 'marks.read')
		return fc
			.tuple(said(marks), said(optionalFields[type]))
			.map(([read, more]) => ({ type, marks: read, ...more }) as unknown as WalkEvent);
	const bases = basesOf(type, steps);
	if (bases.length === 0) return null;
	return fc
		.tuple(fc.constantFrom(...bases), said(optionalFields[type]))
		.map(([base, more]) => ({ type, ...base, ...more }) as unknown as WalkEvent);
}

/** Any event that a kit's steps know; those that end steps often, giving up seldom. */
export function anyPartialEvent(steps: readonly Step[]): fc.Arbitrary<WalkEvent> {
	const weights: Partial<Record<WalkEventType, number>> = {
		'titrant.drawn': 4,
		'titrant.fell': 6,
		'colour.stayed': 4,
		'marks.read': 4
	};
	return fc.oneof(
		...types.flatMap((type) => {
			const arbitrary = type === 'walk.abandoned' ? null : noted(type, steps);
			return arbitrary ? [{ arbitrary, weight: weights[type] ?? 1 }] : [];
		})
	);
}
