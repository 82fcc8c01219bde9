import { houseKitOf, stepsOf, type Kit, type Step } from '../../src/lib/kits';
import type { WalkEvent } from '../../src/lib/observation';
import { slipsIn, type TimedEvent, type TimedWalkEvent } from '../../src/lib/procedure';

export const syringeKit = houseKitOf('house-syringe');
export const dropperKit = houseKitOf('house-dropper');
export const buretteKit = houseKitOf('house-burette');

/** A kit whose leaflet asks for a second reagent and for standing still: every kind of step there is. */
export const slowKit: Kit = {
	...syringeKit,
	id: 'made-up-slow',
	reagents: [
		{
			id: 'buffer',
			name: 'buffer',
			role: 'buffer',
			dose: { amount: 1, unit: 'spoon' },
			mixSeconds: 10,
			waitSeconds: 60
		},
		...syringeKit.reagents
	]
};

export const allKits: [string, Kit][] = [syringeKit, dropperKit, buretteKit, slowKit].map((kit) => [
	kit.id,
	kit
]);

/** One event of every sort that a walk may meet; ends of steps for each step there is, and for none. */
export function everyEvent(steps: readonly Step[]): TimedWalkEvent[] {
	const plain: WalkEvent[] = [
		{ type: 'sample.chosen', volumeId: 'normal' },
		{ type: 'vial.rinsed', ware: 'vial', with: 'sample' },
		{ type: 'sample.measured', volumeMl: 6 },
		{ type: 'reagent.added', reagentId: 'indicator', amount: 1 },
		{ type: 'vial.swirled', seconds: 2 },
		{ type: 'wait.over' },
		{ type: 'tip.fitted', firm: true },
		{ type: 'tip.wiped' },
		{ type: 'titrant.drawn', sealMl: 1, lineMl: 0.83 },
		{ type: 'filling.done' },
		{ type: 'titrant.fell', drops: 1 },
		{ type: 'drop.touchedOff' },
		{ type: 'lamp.changed', lamp: 'white' },
		{ type: 'colour.turned' },
		{ type: 'colour.faded' },
		{ type: 'colour.stayed' },
		{ type: 'titrant.spent' },
		{ type: 'marks.read', marks: { sealMl: 0.48, levelMl: 3.6, drops: 14 } },
		// No kit is read by nothing at all.
		{ type: 'marks.read', marks: {} },
		{ type: 'value.reported', value: 8.2, unit: 'dKH' },
		{ type: 'walk.abandoned' }
	];
	const ids = [...steps.map((step) => step.id), 'no-such-step'];
	const ends = ids.flatMap((stepId): WalkEvent[] => [
		{ type: 'step.done', stepId },
		{ type: 'step.skipped', stepId }
	]);
	return [...plain, ...ends].map((event, i) => ({ ...event, at: 1000, entryId: `e${i}` }));
}

/** Events a second apart, with ids by their places. */
export function timeline(events: readonly WalkEvent[], secondsApart = 1): TimedEvent[] {
	return events.map((event, i) => ({ id: `e${i}`, at: i * secondsApart * 1000, event }));
}

/** Kinds of slip in what happened, each once. */
export function kindsIn(kit: Kit, events: readonly TimedEvent[], steps = stepsOf(kit)): string[] {
	return [...new Set(slipsIn(kit, steps, events).map((slip) => slip.kind))];
}
