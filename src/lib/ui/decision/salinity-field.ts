import { salinityOfSpecificGravity } from '$lib/chemistry';
import { possibleSalinity } from '$lib/judgement';
import { typedNumber } from '$lib/kits';
import { plain } from '../charts/numbers';
import type { Meant, TankField } from './tank-fields';

/** What instruments show of seawater; spoken of by its last figures as well: 1025 for 1.025. */
const gravities = { low: 1.001, high: 1.035, why: '' };
const inThousands = { low: 1001, high: 1035, why: '' };
const conductivities = { low: 45.1, high: 70, why: '' };
/**
 * Temperature for which most scales of specific gravity are drawn. One drawn for another may mean up to 2
 * more or less (common practice, no source), which is said where it is taken.
 */
const GRAVITY_C = 25;

const has = (text: string, range: typeof gravities): number | null => {
	const typed = typedNumber(text, '', range);
	return 'value' in typed ? typed.value : null;
};

/** A specific gravity, or a conductivity, written where a salinity belongs. */
function meantBy(text: string): Meant | null {
	const thousands = has(text, inThousands);
	const gravity = thousands === null ? has(text, gravities) : thousands / 1000;
	if (gravity !== null) {
		const salinity = plain(salinityOfSpecificGravity(gravity, GRAVITY_C), 1);
		const isPossible = Number(salinity) >= possibleSalinity.low;
		const said = `That is a specific gravity: ${gravity.toFixed(4).replace(/0$/, '')} at ${GRAVITY_C} °C is a salinity of about ${salinity}`;
		return {
			words: isPossible
				? `${said}, and is taken as that. If the scale of the instrument is drawn for another temperature, type the salinity instead: it may be off by up to 2.`
				: `${said}.`,
			instead: isPossible ? salinity : null,
			isTaken: isPossible
		};
	}
	if (has(text, conductivities) !== null)
		return {
			words:
				'If that is a conductivity in mS/cm, let the meter show the salinity (PSU, ppt or g/kg).',
			instead: null
		};
	return null;
}

/** Without it nothing is moved: it moves the value too. */
export const salinityField: TankField = {
	name: 'salinity',
	label: 'Salinity',
	unit: 'PSU or g/kg',
	hint: 'For example 35, as in the ocean. A specific gravity such as 1.026 is taken as the salinity that it means.',
	what: 'the salinity',
	range: {
		...possibleSalinity,
		why: `The salinity of a tank lies between ${possibleSalinity.low} and ${possibleSalinity.high}; the ocean has 35`
	},
	meantBy
};
