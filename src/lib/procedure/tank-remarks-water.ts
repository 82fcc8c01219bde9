import type { Circumstances } from '../observation';
import type { Remark, Remarker } from './tank-remark';
import { lampAt } from './slips-titrating';

/** Before so long after a dose the tank is not mixed, hours (common practice, no source). */
const MIXED_AFTER_H = 1;

const otherWaters: Partial<Record<NonNullable<Circumstances['water']>, string>> = {
	topOff: 'This is top-off water and not the tank’s: it should read about 0.',
	newMix: 'This is new salt water: the value is about the mix, not the tank.',
	reference: 'This is a known solution: the value is about kit and hands, not the tank.',
	other: 'This is not tank water: the value is about what is in the vial.'
};

/** Words by which people tell that a sample came from where dosed water enters. */
const atTheOutlet = /outlet|inlet|inflow|outflow|return|doser|dosing (line|tube)|reactor/i;

/** Whose water it is, and whether it is mixed: while another sample can be taken, and at the result. */
export const waterRemarks: Remarker = ({ circumstances, isPast, step }) => {
	if (step !== null && isPast('measure')) return [];
	const { water, hoursSinceDose, takenWhere } = circumstances;
	const remarks: Remark[] = [];
	const isTank = water === undefined || water === 'tank';
	if (isTank && hoursSinceDose !== undefined && hoursSinceDose < MIXED_AFTER_H)
		remarks.push({
			id: 'water.dosed',
			tone: 'warn',
			text: 'Dosed less than an hour ago: it may read high. An hour later it would be mixed.'
		});
	if (isTank && takenWhere !== undefined && atTheOutlet.test(takenWhere))
		remarks.push({
			id: 'water.outlet',
			tone: 'warn',
			text: 'Water from there has not met the whole tank. Take it in open, moving water.'
		});
	const other = water && otherWaters[water];
	if (other) remarks.push({ id: 'water.other', tone: 'say', text: other });
	return remarks;
};

/** Under what light the colour is seen: from the first reagent until the end is declared. */
export const lightRemarks: Remarker = ({ events, circumstances, steps, step, isPast }) => {
	const measure = steps.findIndex(({ kind }) => kind === 'measure');
	const here = step ? steps.indexOf(step) : -1;
	if (here <= measure || isPast('titrate')) return [];
	const lamp = lampAt(events, circumstances.light);
	if (lamp !== 'blue' && lamp !== 'dim') return [];
	return [
		{
			id: 'light',
			tone: 'warn',
			text:
				lamp === 'blue'
					? 'Blue light hides the change of colour. White light and a white card first.'
					: 'Too dim to judge a colour. White light and a white card first.',
			offers: ['whiteLight']
		}
	];
};
