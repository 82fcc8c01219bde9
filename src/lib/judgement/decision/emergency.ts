import type { Decision } from './decision';

/** What to do when something is happening that needs no number. */
export type EmergencyPath = {
	/** What counts as such, each a few words. */
	signs: readonly string[];
	/** In this order. */
	steps: readonly string[];
	/** What makes it worse. */
	never: readonly string[];
	/** For the person, not the tank. */
	person: string;
	/** Test again after so many hours. */
	retestAfterHours: { from: number; to: number };
	origin: string;
};

const path: EmergencyPath = {
	signs: [
		'The water is hazy, or white flakes drift in it',
		'Fish gasp at the surface',
		'A doser is stuck, or a bottle went in at once'
	],
	steps: [
		'Stop all dosing. Unplug the pumps that dose.',
		'Aerate: an air stone, the skimmer, a pump that breaks the surface.',
		'Check pH and salinity.',
		'Change some of the water for new water of the same salinity and temperature.',
		'Test again after 1 to 2 hours, and go on from there.'
	],
	never: ['Add no calcium.', 'Add no acid.', 'Add nothing else to set it right.'],
	person: 'Alkali or acid in an eye: rinse at once with running water, and get help.',
	retestAfterHours: { from: 1, to: 2 },
	origin: 'common practice, no source'
};

/** Steps for haze, gasping fish or a stuck doser; they need no reading and no diagnosis. */
export function emergencyPath(): EmergencyPath {
	return path;
}

/** The decision in an emergency. It rests on what was seen, not on a value. */
export function emergencyDecision(probabilities: Decision['probabilities'] = null): Decision {
	return {
		verdict: 'emergency',
		direction: null,
		probabilities,
		because: ['What you see needs no number.', ...path.steps, ...path.never],
		wouldChange: [
			'Clear water, calm fish, and pH and salinity as usual: then check the reading in peace.'
		],
		check: null,
		lacks: null,
		isVerified: false,
		change: null,
		retestInDays: 0
	};
}
