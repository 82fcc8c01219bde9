import type { Analysis } from '../diagnosis/analysis';
import type { Foreseen } from './foresee';

/** Kinds that are worth telling apart, by account: what sort of thing is wrong, and whether the reading holds. */
export type Kinds = {
	of: Int32Array;
	/** Weight of each kind, and the heaviest explanation in it. */
	weight: number[];
	explanation: number[];
};

/**
 * What sort of account it is: where the cause sits and whether it lasts, and whether the reading in
 * question is then right within what it claims. A remedy needs no more.
 */
export function kindsOf(analysis: Analysis, foreseen: Foreseen): Kinds {
	const { faults, places, model } = analysis;
	// Without a reading from before, nothing that is tested tells of a change.
	const isHistory = model.rows.slice(0, model.count).some(({ isEarlier }) => isEarlier);
	const names = new Map<string, number>();
	const weightIn = new Map<number, Map<number, number>>();
	const of = Int32Array.from(foreseen.explanation, (place, c) => {
		const sorts =
			place === places.noneOfThese
				? ['noneOfThese']
				: places
						.faultsAt(place)
						.filter((fault) => isHistory || faults[fault]!.scope !== 'tank')
						.map((fault) => `${faults[fault]!.class} ${faults[fault]!.scope}`)
						.sort();
		const name = `${sorts.join('+')} ${holds(analysis, foreseen.tankMean[c]!)}`;
		const kind = names.get(name) ?? names.size;
		names.set(name, kind);
		const inside = weightIn.get(kind) ?? new Map<number, number>();
		inside.set(place, (inside.get(place) ?? 0) + foreseen.weight[c]!);
		weightIn.set(kind, inside);
		return kind;
	});
	const kinds = [...weightIn].sort(([a], [b]) => a - b).map(([, inside]) => [...inside]);
	return {
		of,
		weight: kinds.map((inside) => inside.reduce((sum, [, weight]) => sum + weight, 0)),
		explanation: kinds.map(
			(inside) => inside.reduce((best, each) => (each[1] > best[1] ? each : best))[0]
		)
	};
}

/** Whether the reading in question is right within about what it claims. */
function holds({ model, first }: Analysis, tankMean: number): boolean {
	if (first < 0) return true;
	const at = first * model.size + first;
	const value = model.value[first]!;
	const variance = model.added[at]! + model.scatter[first]! + value ** 2 * model.share[at]!;
	return Math.abs(tankMean - value) <= 2 * Math.sqrt(variance);
}
