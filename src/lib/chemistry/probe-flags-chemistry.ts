import type { TitrationFit } from './fit-options';
import { flag, LIMITS, percent, type KnownAlkalinity, type ProbeFlag } from './probe-flag';

/** Whether carbon and alkalinity of a closed seawater sample can belong together. */
export function flagsOfCarbon(fit: TitrationFit): ProbeFlag[] {
	if (fit.vessel !== 'closed') return [];
	const carbonShare = fit.dicMolPerKg / fit.alkalinityMolPerKg;
	const slack = (2 * fit.dicStandardUncertaintyMolPerKg) / fit.alkalinityMolPerKg;
	const { low, high } = LIMITS.carbonShare;
	if (carbonShare >= low - slack && carbonShare <= high + slack) return [];
	return [
		flag(
			'carbonInconsistent',
			'doubt',
			`The curve asks for ${percent(carbonShare)} as much carbon as alkalinity; seawater has about 85 to 95 %. CO2 left, or acid strength, volumes or the water's kind are not what was typed.`,
			{ carbonOverAlkalinity: carbonShare }
		)
	];
}

/** Whether a known solution comes out as what it is: the only way to see the strength of the acid. */
export function flagsOfKnown(
	found: KnownAlkalinity,
	known: KnownAlkalinity | undefined
): ProbeFlag[] {
	if (!known) return [];
	const difference = found.alkalinityMolPerKg - known.alkalinityMolPerKg;
	const sd = Math.hypot(found.standardUncertaintyMolPerKg, known.standardUncertaintyMolPerKg);
	if (Math.abs(difference) <= 2 * sd) return [];
	const foundOverKnown = found.alkalinityMolPerKg / known.alkalinityMolPerKg;
	return [
		flag(
			'acidStrength',
			'doubt',
			`The known solution comes out ${percent(Math.abs(foundOverKnown - 1))} too ${difference > 0 ? 'high' : 'low'}, more than the ± explains. The acid is ${difference > 0 ? 'weaker' : 'stronger'} than was typed, a volume is off, or the solution is not what it should be.`,
			{ foundOverKnown }
		)
	];
}
