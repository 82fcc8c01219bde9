import { cuesFor, type Cue } from '../../../src/lib/judgement';
import { readingScatter, type MethodFigures } from '../../../src/lib/metrology';
import type { CheckId, Evidence, Reading } from '../../../src/lib/observation';
import type { Chance } from '../chance';
import { believed, believedOf, type BelievedOf } from './prior-believed';
import type { DrawnCauses, Present } from './prior-causes';
import {
	effectsOf,
	inVialOf,
	presentIn,
	readByKit,
	sharedNormals,
	unforeseenIn,
	type MadeBy
} from './prior-test';
import { pickWeighted, shuffled } from './seeds';

/** Of what a second method claims, so much lasts for the instrument. */
const LASTING = 0.75;
const WEIGHED_PLUS_MINUS = 0.01;

const own: MadeBy = {
	isFirst: false,
	check: null,
	isEarlier: false,
	kit: true,
	hands: 'own',
	lot: 'own',
	sampling: 'own',
	solution: false,
	instrument: false,
	ratio: 1
};

/** What the kit's figures claim of a reading, k = 2. */
function plusMinusOf(method: MethodFigures, value: number, ratio: number): number {
	const { variance } = readingScatter(method, { value, sampleRatio: ratio });
	const share = Math.hypot(method.sampleWareSd, method.titrantWareSd, method.lotSd);
	return 2 * Math.sqrt(variance + (value * share) ** 2 + method.endPointSd ** 2);
}

/** Likelihoods of the answers, two faults that a question names taken together. */
function answerRow({ likelihoods }: Cue, faults: readonly string[]): [string, number][] {
	const { otherwise, byFault } = likelihoods;
	const rows = faults.map((id) => byFault[id]).filter((row) => row !== undefined);
	const [one, two] = rows;
	return Object.entries(otherwise).map(([answer, usual]) => {
		const a = one?.[answer] ?? usual;
		const b = two?.[answer];
		if (b === undefined) return [answer, a];
		const isMore = a >= usual && b >= usual;
		return [answer, isMore ? 1 - ((1 - a) * (1 - b)) / (1 - usual) : (a * b) / usual];
	});
}

/** Everything hidden in one case, from which every reading follows. */
export class PriorWorld {
	readonly #shared: (name: string) => number;
	readonly tank: number;
	readonly #of: BelievedOf;
	#slipped = false;
	#made = 0;

	constructor(
		readonly method: MethodFigures,
		readonly causes: DrawnCauses,
		readonly second: NonNullable<Present['second']>,
		readonly chance: Chance
	) {
		this.#shared = sharedNormals(chance);
		this.#of = believedOf(method.analyte);
		this.tank = this.#of.tank.mean + this.#of.tank.sd * chance.normal();
	}

	/** Another test may have gone astray by a slip of its own, but no two of them. */
	#slip(): number {
		if (this.#slipped || this.causes.unforeseen) return 0;
		if (this.chance.uniform() >= believed.slipElsewhere) return 0;
		this.#slipped = true;
		return this.#of.unforeseenSd * this.chance.normal();
	}

	#reading(drawn: number, expandedUncertainty: number, isOfNothing = false): Reading {
		const { lowestRead, highestRead, unit } = this.#of;
		const lowest = isOfNothing ? lowestRead.ofNothing : lowestRead.ofWater;
		const value = Math.min(highestRead, Math.max(lowest, drawn));
		const id = `r${this.#made++}`;
		return { id, label: id, value: Number(value.toFixed(4)), expandedUncertainty, unit };
	}

	#byKit(amount: number, by: MadeBy, shift = 0): Reading {
		const { method, causes, chance } = this;
		const clean = readByKit(amount, by, method, causes, this.#shared, chance);
		const value = clean + shift + (by.isFirst ? 0 : this.#slip());
		// A solution was tested for all that is in it, and nothing taken off.
		const takenOff = by.sampling === null ? 0 : 2 * this.#of.takenOffSd;
		const plusMinus = Math.hypot(plusMinusOf(method, value, by.ratio), takenOff);
		return this.#reading(value, plusMinus, amount === 0);
	}

	#portion(sampling: string): number {
		return this.tank + this.#of.portionSd * this.#shared(`portion ${sampling}`);
	}

	test(from: 'first' | CheckId): Evidence {
		const by: MadeBy = {
			...own,
			isFirst: from === 'first',
			check: from === 'first' ? null : from,
			hands: from === 'otherHands' ? 'other' : 'own',
			lot: from === 'freshLot' ? 'fresh' : 'own',
			sampling: from === 'freshSample' ? 'fresh' : 'own',
			ratio: from === 'largerSample' ? 2 : 1
		};
		return { kind: 'test', from, reading: this.#byKit(this.#portion(by.sampling ?? ''), by) };
	}

	reference(): Evidence {
		const { nominal, plusMinus, matrix } = this.#of.solution;
		const amount = nominal + (plusMinus / 2) * this.#shared('solution');
		const by: MadeBy = { ...own, sampling: null, solution: true, check: 'reference' };
		return {
			kind: 'reference',
			reading: this.#byKit(amount, by, matrix.mean + matrix.sd * this.#shared('matrix')),
			nominal,
			nominalExpandedUncertainty: plusMinus,
			matrix: 'sodiumChloride',
			solution: 'own'
		};
	}

	secondMethod(): Evidence {
		const by: MadeBy = { ...own, kit: false, hands: '', lot: '', instrument: true };
		const effects = effectsOf(presentIn(this.causes, by), this.method, 1);
		const u = this.#of.secondPlusMinus / 2;
		const odd = unforeseenIn(this.causes, by);
		const value =
			effects.factor * inVialOf(this.#portion('own'), effects) +
			effects.added +
			odd.size +
			u * Math.sqrt(LASTING) * this.#shared('instrument') +
			u * Math.sqrt(1 - LASTING) * odd.times * this.chance.normal();
		return {
			kind: 'secondMethod',
			reading: this.#reading(value, this.#of.secondPlusMinus),
			method: this.second,
			instrument: 'other'
		};
	}

	earlier(daysAgo: number, days: readonly number[]): Evidence {
		const way = days
			.filter((day) => day <= daysAgo)
			.reduce(
				(sum, day, i) => sum + Math.sqrt(day - (days[i - 1] ?? 0)) * this.#shared(`way ${day}`),
				0
			);
		const then =
			this.tank -
			(this.causes.change ?? 0) -
			this.#of.perRootDaySd * way -
			this.#of.trendPerDaySd * daysAgo * this.#shared('trend') +
			this.#of.daySd * this.chance.normal();
		const by: MadeBy = { ...own, isEarlier: true, sampling: `days ${daysAgo}` };
		return { kind: 'earlier', reading: this.#byKit(then, by), daysAgo };
	}

	weighing(ware: 'sample' | 'titrant'): Evidence {
		const isSample = ware === 'sample';
		const scope = isSample ? 'sampleWare' : 'titrantWare';
		const shownBy = isSample ? 'weighSampleWare' : 'weighTitrantWare';
		const factor = this.causes.faults
			.filter(
				({ fault, of }) =>
					of === 'share' &&
					fault.target === 'gain' &&
					(fault.scope === scope || (fault.scope === 'hands' && fault.shownBy.includes(shownBy)))
			)
			.reduce((product, { amount }) => product * (1 + amount), 1);
		const sd = isSample ? this.method.sampleWareSd : this.method.titrantWareSd;
		const reads =
			factor * (1 + sd * this.#shared(scope)) + (WEIGHED_PLUS_MINUS / 2) * this.chance.normal();
		return {
			kind: 'weighing',
			ware,
			foundOverNominal: Number((isSample ? reads : 1 / reads).toFixed(4)),
			expandedUncertainty: WEIGHED_PLUS_MINUS
		};
	}

	answers(count: number): Evidence[] {
		const { chance } = this;
		const ids = [
			...this.causes.faults.map(({ fault }) => fault.id),
			...(this.causes.change === null ? [] : ['realChange'])
		];
		const asked = cuesFor(this.method).filter(({ about }) => about === undefined);
		return shuffled(chance, asked)
			.slice(0, count)
			.map((cue): Evidence => {
				const [answer] = pickWeighted(chance, answerRow(cue, ids), ([, p]) => p);
				return { kind: 'cue', cue: cue.id, answer };
			});
	}
}
