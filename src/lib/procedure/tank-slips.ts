import type { Circumstances, Slip } from '../observation';
import { slipsIn } from './slips';
import type { TankTitration } from './tank-test';
import { titrantWordsOf } from './tank-titrant-words';
import { valueOfTitration } from './titration-value';

/**
 * Slips that a titration beside the tank shows, from what hands noted of it.
 *
 * @param circumstances what was said before; only the light is looked at
 */
export function slipsAtTank(
	titration: TankTitration,
	circumstances: Pick<Circumstances, 'light'> = {}
): Slip[] {
	const { kit, steps, events } = titration;
	const valued = valueOfTitration(titration, kit);
	const { noSlips } = titrantWordsOf(kit);
	return slipsIn(kit, steps, events, { valued, light: circumstances.light }).filter(
		({ kind }) => !noSlips.includes(kind)
	);
}
