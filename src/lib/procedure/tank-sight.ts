import type { Kit } from '../kits';
import { sampleVolumeOf } from './counted-mark';
import { valuePerMlFor } from './expected-use';
import type { Remark, RemarkOptions, TankSight } from './tank-remark';
import type { TankTitration } from './tank-test';
import { stepOf } from './walk-helpers';

/** All that remarks on a titration may rest on. */
export function sightOf(titration: TankTitration, options: RemarkOptions): TankSight {
	const { kit, steps, events, walk } = titration;
	return {
		...options,
		titration,
		kit,
		steps,
		events,
		step: walk.status === 'active' ? stepOf(walk.context) : null,
		isPast: (kind) => {
			const place = steps.findLastIndex((step) => step.kind === kind);
			return place >= 0 && walk.context.stepIndex > place;
		}
	};
}

/** What so much titrant is worth with the sample in use; nothing where the leaflet has no values. */
export function costOf(
	{ kit, events }: Pick<TankSight, 'kit' | 'events'>,
	volumeMl: number
): Pick<Remark, 'costValue' | 'unit' | 'analyte'> {
	const valuePerMl = valuePerMlFor(kit, sampleVolumeOf(kit, events));
	if (valuePerMl === null || !Number.isFinite(volumeMl)) return {};
	return {
		costValue: Math.abs(volumeMl * valuePerMl),
		unit: kit.unit,
		analyte: kit.analyte
	};
}

/** The leaflet's smallest and largest sample beside the one in use, where it has others. */
export function otherVolumes(kit: Kit, sampleVolumeMl: number) {
	const volumes = kit.sample.volumes.map(({ volumeMl }) => volumeMl);
	const smaller = volumes.filter((volumeMl) => volumeMl < sampleVolumeMl);
	const larger = volumes.filter((volumeMl) => volumeMl > sampleVolumeMl);
	return {
		smallerMl: smaller.length > 0 ? Math.max(...smaller) : null,
		largerMl: larger.length > 0 ? Math.min(...larger) : null
	};
}
