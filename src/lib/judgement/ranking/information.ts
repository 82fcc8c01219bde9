import type { Outcomes } from './outcomes';

/**
 * Expected information of an outcome about which kind of account is true, in bits:
 * I = Σ p(d) Σ p(k|d) log₂ (p(k|d) / p(k)).
 *
 * Source: mutual information, Shannon 1948; as the worth of an experiment, Lindley 1956.
 *
 * @param kinds kind of each account, from 0
 */
export function informationOf(
	{ likelihood, cells }: Pick<Outcomes, 'likelihood' | 'cells'>,
	weight: Float64Array,
	kinds: Int32Array
): number {
	const count = kinds.reduce((most, kind) => Math.max(most, kind + 1), 0);
	const joint = new Float64Array(count * cells);
	const ofKind = new Float64Array(count);
	const ofCell = new Float64Array(cells);
	for (let c = 0; c < weight.length; c++) {
		const kind = kinds[c]!;
		if (kind < 0) continue;
		ofKind[kind]! += weight[c]!;
		for (let k = 0; k < cells; k++) {
			const p = weight[c]! * likelihood[c * cells + k]!;
			joint[kind * cells + k]! += p;
			ofCell[k]! += p;
		}
	}
	const whole = ofKind.reduce((sum, each) => sum + each, 0);
	if (!(whole > 0)) return 0;
	let sum = 0;
	for (let d = 0; d < count; d++)
		for (let k = 0; k < cells; k++) {
			const p = joint[d * cells + k]!;
			if (p > 1e-12) sum += p * Math.log((p * whole) / (ofKind[d]! * ofCell[k]!));
		}
	return Math.max(0, sum / whole / Math.LN2);
}
