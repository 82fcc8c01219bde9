import { requireWithin } from '../../chemistry';
import type { Consistency, ConsistencyInput, Finding } from './consistency';
import { saturationOf } from './consistency-saturation';
import { oneErrorInBoth, salinityFirst, seaProportion } from './consistency-sea';
import { magnesiumForHolding, useInProportion } from './consistency-use';

const LIMITS = [
	'Values that fit together can all be off together: one wrong salinity, one pair of hands.',
	'Any pair of calcium and alkalinity can be found in a tank: seawater stays far above saturation for days.',
	'Salt mixes differ from the sea and from one another; the sea is a yardstick here, not an aim.',
	'Mixes of one salinity differ much in alkalinity, so alkalinity is not held against the sea.'
];

function requireKnown(input: ConsistencyInput): void {
	const values = {
		alkalinity: input.alkalinity,
		calcium: input.calcium,
		magnesium: input.magnesium,
		'usedUp.alkalinity': input.usedUp?.alkalinity,
		'usedUp.calcium': input.usedUp?.calcium
	};
	for (const [field, known] of Object.entries(values)) {
		if (!known) continue;
		requireWithin(`${field}.value`, known.value, field.startsWith('usedUp') ? -1e5 : 0, 1e5);
		requireWithin(`${field}.expandedUncertainty`, known.expandedUncertainty, 1e-9, 1e5);
	}
	if (input.salinity) requireWithin('salinity.value', input.salinity.value, 20, 43);
	if (input.ph) requireWithin('ph.value', input.ph.value, 6.5, 9.5);
	if (input.temperatureC !== undefined) requireWithin('temperatureC', input.temperatureC, 5, 39);
}

/**
 * The three values and the salinity looked at together: what one cause would do to several of them at
 * once, what they cannot tell, and the saturation of aragonite for what it is. Nothing here bears a value
 * out: that takes something independent.
 *
 * @param input each value with its ±, in any unit of its analyte
 * @throws RangeError naming the field outside its range
 */
export function lookTogether(input: ConsistencyInput): Consistency {
	requireKnown(input);
	const findings = [
		salinityFirst(input),
		seaProportion(input),
		oneErrorInBoth(input),
		useInProportion(input),
		magnesiumForHolding(input)
	].filter((each): each is Finding => each !== null);
	return { findings, saturation: saturationOf(input), limits: LIMITS };
}
