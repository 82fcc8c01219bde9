import type { Kit, Step } from '../kits';
import type { Slip, SlipKind, SlipNature } from '../observation';
import type { AtTank, Detector } from './slip-detector';
import { fillingSlips } from './slips-filling';
import { readingSlips } from './slips-reading';
import { sampleSlips } from './slips-sample';
import { titratingSlips } from './slips-titrating';
import type { TimedEvent } from './walk-log';

const detectors = {
	...sampleSlips,
	...fillingSlips,
	...titratingSlips,
	...readingSlips
} satisfies Record<SlipKind, Detector>;

/** When a slip may be spoken of: at once, or only after the person has declared the thing it is about. */
export const natureOf = {
	wareNotRinsed: 'handling',
	sampleOff: 'handling',
	indicatorOff: 'handling',
	phReagentOff: 'handling',
	waitOff: 'handling',
	tipFittedLate: 'handling',
	tipLoose: 'handling',
	airExpelled: 'handling',
	hangingAtStart: 'handling',
	mixedMarks: 'handling',
	wrongRim: 'judgement',
	dropperTilted: 'handling',
	dropperSqueezed: 'handling',
	stoppedAtFlash: 'judgement',
	overshot: 'judgement',
	chasedColour: 'judgement',
	swirledOddly: 'judgement',
	wrongLight: 'judgement',
	hangingAtEnd: 'judgement',
	dropsMiscounted: 'judgement',
	misread: 'judgement',
	parallax: 'judgement',
	scaleReversed: 'judgement',
	refillForgotten: 'judgement',
	wrongRow: 'judgement'
} satisfies Record<SlipKind, SlipNature>;

/**
 * Every slip that the events show, in the order of the kinds.
 *
 * @param tank what is known besides where real hands noted the events; left out at the bench
 */
export function slipsIn(
	kit: Kit,
	steps: readonly Step[],
	events: readonly TimedEvent[],
	tank?: AtTank
): Slip[] {
	const seen = { kit, steps, events, tank };
	return (Object.keys(detectors) as SlipKind[]).flatMap((kind) =>
		detectors[kind](seen).map((slip) => ({ ...slip, kind, nature: natureOf[kind] }))
	);
}
