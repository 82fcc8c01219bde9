import type { Chance } from '../studies/chance';

/**
 * A syringe or dropper test drawn part by part (JCGM 101:2008, propagation of distributions), by
 * its mechanism: whole drops are added until the colour has turned, the mark is rounded, and both happen
 * anew in each repeat. It knows nothing of the budget; sizes are handed in.
 */
export type Drawn = {
	/** Value that 1 mL stands for, and the truth in mL of titrant: the middle of a span to draw from. */
	valuePerMl: number;
	truthMl: number;
	dropMl: number;
	/** Standard deviations or half-widths, as shares; what stays, then what falls anew. */
	sampleLimit: number;
	scaleLimit: number;
	strengthSd: number;
	settingHalfWidth: number;
	/** In drops: the person's own end, and each time. */
	ownColourDrops: number;
	colourDrops: number;
	dropSpread: number;
	/** mL; 0 where drops are counted. */
	graduationMl: number;
};

const half = 0.5;

/** Errors of the mean of n repeats, in the unit of the value. */
export function drawnErrors(kit: Drawn, n: number, tests: number, chance: Chance): number[] {
	const { dropMl, valuePerMl, graduationMl } = kit;
	return Array.from({ length: tests }, () => {
		// Anywhere between two drops, as a tank's value is.
		const truthMl = kit.truthMl + chance.even(dropMl);
		const sample = chance.triangular(kit.sampleLimit);
		const strength = kit.strengthSd * chance.normal();
		const scale = chance.triangular(kit.scaleLimit);
		const own = kit.ownColourDrops * chance.normal() * dropMl;
		let sum = 0;
		for (let i = 0; i < n; i++) {
			const set = chance.even(kit.settingHalfWidth);
			const endMl =
				(truthMl * (1 + sample + set)) / (1 + strength) +
				own +
				kit.colourDrops * chance.normal() * dropMl;
			let usedMl = 0;
			while (usedMl < endMl) usedMl += dropMl * (1 + kit.dropSpread * chance.normal());
			sum += readMl(usedMl) - half * dropMl - truthMl;
		}
		return (sum / n) * valuePerMl;

		function readMl(usedMl: number): number {
			if (graduationMl === 0) return usedMl;
			const align = () => 0.2 * graduationMl * chance.normal();
			const mark = usedMl / (1 + scale) + align() + align();
			return (Math.round(mark / (graduationMl / 2)) * graduationMl) / 2;
		}
	});
}
