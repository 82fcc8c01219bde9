import type { RemarkOffer } from '$lib/procedure';

/** What stands on the button of an offer. */
export const offerWords: Record<RemarkOffer, string> = {
	refillToSeal: 'Push back to the seal',
	readLineToo: 'Keep it, read the line at the end',
	freshSample: 'Take a fresh sample',
	useLargerSample: 'Take more water',
	useSmallerSample: 'Take less water',
	dilute: 'Thin the sample',
	refill: 'Fill again',
	readOtherEnd: 'Read from the other end',
	countAgain: 'Count again',
	whiteLight: 'The light is white now'
};
