import type { Account } from './account';
import { contentsOfSample } from './deeds-sample';
import { withDoses } from './dosing';
import { kindOf, type Passed } from './titration-kind';

/** What has passed in an account's sample, dosed as it was, after the leaflet's own mixing and waits. */
export function passedByLeaflet({ kit, chemistry }: Account): Passed {
	const kind = kindOf(kit);
	const { water, sample, doses, bottles } = chemistry;
	const start = contentsOfSample(kit, water, sample);
	const stood = kit.reagents.reduce((contents, { id, mixSeconds, waitSeconds }) => {
		const given = doses[id] ?? 0;
		const dosed = given > 0 ? withDoses(kit, contents, id, given, bottles) : contents;
		return kind.settle(dosed, { seconds: mixSeconds + waitSeconds, carbonDioxideShare: 0 });
	}, start);
	return kind.passedBetween(start, stood);
}
