import {
	bandOf,
	correctionInputOf,
	correctionPlan,
	decide,
	salinityOf
} from '../../../src/lib/judgement';
import type { Diagnosis, RankedCheck } from '../../../src/lib/judgement';
import { firstTest, MadeRun } from '../conversation/made-run.svelte';

/** A check in memory whose advice and plan are really worked out from what is handed in and said. */
export function decidingRun({
	diagnosis,
	next = null,
	isEmpty = false
}: {
	diagnosis: Diagnosis | null;
	next?: RankedCheck | null;
	/** Nothing is in question yet. */
	isEmpty?: boolean;
}): MadeRun {
	const run = new MadeRun();
	if (!isEmpty) run.give(firstTest);
	run.diagnosis = diagnosis;
	Object.defineProperties(run, {
		decision: {
			get() {
				const { tank, livestock, isEmergency, isUnitDoubted } = run.state;
				if (!isEmergency && (!run.diagnosis || !livestock)) return null;
				return decide({
					diagnosis: run.diagnosis,
					band: bandOf(tank, run.unit),
					livestock: livestock ?? 'notLooked',
					next,
					isEnough: next === null,
					isUnitSure: !isUnitDoubted,
					salinity: salinityOf(tank),
					isEmergency,
					...(tank.who === undefined ? {} : { who: tank.who }),
					...(tank.hasStonyCorals === undefined ? {} : { hasStonyCorals: tank.hasStonyCorals })
				});
			}
		},
		plan: {
			get() {
				const { decision, diagnosis: known } = run;
				const { tank, means, isUnitDoubted } = run.state;
				if (decision?.verdict !== 'adjust' || !known || !means) return null;
				return correctionPlan(
					correctionInputOf({
						decision,
						diagnosis: known,
						tank,
						means,
						isUnitSure: !isUnitDoubted,
						testReading: run.state.inQuestion?.reading ?? null
					})
				);
			}
		}
	});
	return run;
}
