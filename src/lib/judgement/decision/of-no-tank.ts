import type { Diagnosis } from '../diagnosis/diagnosis';

type Told = Pick<Diagnosis, 'isBeyondAnyTank' | 'isTankUnread'>;

/** Of the tank nothing follows from what was read: no tank holds it, or it was probably not the tank's water. */
export const isOfNoTank = ({ isBeyondAnyTank, isTankUnread }: Told): boolean =>
	(isBeyondAnyTank ?? false) || (isTankUnread ?? false);

/** Why nothing follows; null where something does. */
export function whyOfNoTank({ isBeyondAnyTank, isTankUnread }: Told): string | null {
	if (isBeyondAnyTank)
		return 'No tank holds what was read. Of the water nothing follows from it: look at the number once more, or test a fresh sample from the tank.';
	return isTankUnread
		? 'What was read tells nothing of the tank: of its water nothing is known yet. Test a fresh sample from the tank.'
		: null;
}
