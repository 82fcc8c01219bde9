import type { Scenario } from '../bench';
import { houseKitOf, titrantOf, type TitrationKindName } from '../kits';
import type { SlipKind } from '../observation';

/** Skills that a drill trains, each list with the titration for which it does; first what it is about most. */
export type Trains = readonly { titration: TitrationKindName; skills: readonly string[] }[];

/** A slip to be trained away, in the titration in which it was made. */
export type ToTrain = { slip: SlipKind; titration: TitrationKindName };

/** What a drill trains, by its own word; a case trains nothing by name. */
export function trainsOf({ kind, kitId, skills, alsoTrains }: Scenario): Trains {
	if (kind !== 'drill') return [];
	const { analyte } = houseKitOf(kitId);
	return [{ titration: titrantOf[analyte].kind, skills }, ...alsoTrains];
}

/**
 * The drill that is most about a slip in its titration: that which names it first, and of several the one
 * that trains least beside it. Null where none trains it: a drill of another titration would teach another
 * colour.
 */
export function drillFor<Drill extends { trains: Trains }>(
	drills: readonly Drill[],
	{ slip, titration }: ToTrain
): Drill | null {
	const found = drills.flatMap((drill) =>
		drill.trains
			.filter((each) => each.titration === titration && each.skills.includes(slip))
			.map(({ skills }) => ({ drill, place: skills.indexOf(slip), beside: skills.length }))
	);
	found.sort((a, b) => a.place - b.place || a.beside - b.beside);
	return found[0]?.drill ?? null;
}
