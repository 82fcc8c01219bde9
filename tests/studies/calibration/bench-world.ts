import { WaterSchema, type Truth } from '../../../src/lib/bench';
import { houseKitsFor, type Kit } from '../../../src/lib/kits';
import { methodFiguresOf, readingScatter, type MethodFigures } from '../../../src/lib/metrology';
import type { CheckId, Evidence, Reading } from '../../../src/lib/observation';
import type { Chance } from '../chance';
import { drawHousehold, drawWater, type Household } from '../hands';
import { answersOnBench } from './bench-answers';
import { benchFaults, fits, type BenchFault, type Keeps, type Played } from './bench-faults';
import { valueOnBench } from './bench-test';
import { between, pick, pickWeighted } from './seeds';

/** A fault as it was played in one case. */
export type Happened = { fault: BenchFault; played: Played; isSince: boolean };

type Setting = {
	isFirst?: boolean;
	hands?: 'other';
	lot?: 'fresh';
	portion?: 'fresh';
	daysAgo?: number;
	water?: Truth['water'];
	volumeId?: string;
};

/** Of what lasts, so much set in after the readings from before; our own choice. */
const SET_IN_SINCE = 0.3;
const SOLUTION = { nominal: 8, plusMinus: 0.2 };
const SECOND = { plusMinus: 0.5, offsetSd: 0.2, sd: 0.12 };

/** Everything hidden in one case on the practice bench. */
export class BenchWorld {
	readonly kit: Kit;
	readonly method: MethodFigures;
	readonly water: Truth['water'];
	readonly happened: Happened[] = [];
	/** Change of the tank that nobody knew of, dKH. */
	changeDkh = 0;
	/** Chance that a test which is not in question has a slip of its own. */
	slipElsewhere = 0;
	readonly #own: Household;
	readonly #other: Household;
	readonly #freshStrength: number;
	readonly #second: number;
	readonly #solution: number;
	#made = 0;

	constructor(readonly chance: Chance) {
		this.kit = pick(chance, houseKitsFor('alkalinity'));
		this.method = methodFiguresOf(this.kit);
		this.#own = drawHousehold(this.kit, chance);
		this.#other = drawHousehold(this.kit, chance);
		this.#freshStrength = 1 + 0.01 * chance.normal();
		this.water = drawWater(chance);
		this.#second = SECOND.offsetSd * chance.normal();
		this.#solution = (SOLUTION.plusMinus / 2) * chance.normal();
	}

	/** Makes something happen. */
	let(fault: BenchFault): void {
		const lasts = !['once', 'portion', 'second', 'solution'].includes(fault.keeps);
		this.happened.push({
			fault,
			played: fault.draw(this.chance, this.kit),
			isSince: lasts && this.chance.uniform() < SET_IN_SINCE
		});
	}

	#playedIn(at: Setting): Played[] {
		const is: Record<Keeps, boolean> = {
			once: at.isFirst ?? false,
			hands: at.hands === undefined,
			lot: at.lot === undefined,
			sampleWare: true,
			titrantWare: true,
			kit: true,
			portion: at.portion === undefined && at.daysAgo === undefined && at.water === undefined,
			second: false,
			solution: false
		};
		return this.happened
			.filter(({ fault, isSince }) => is[fault.keeps] && !(isSince && at.daysAgo !== undefined))
			.map(({ played }) => played);
	}

	#reading(value: number, expandedUncertainty: number): Reading {
		const id = `r${this.#made++}`;
		return { id, label: id, value: Number(value.toFixed(2)), expandedUncertainty, unit: 'dKH' };
	}

	#tested(at: Setting): Reading {
		const { kit, method, chance } = this;
		const other = at.hands === 'other' ? { colourDrops: this.#other.colourDrops } : {};
		const lot = at.lot === 'fresh' ? { strengthFactor: this.#freshStrength } : {};
		const slips = benchFaults.filter(({ keeps }) => keeps === 'once').filter(fits(kit));
		const isSlipped = !at.isFirst && chance.uniform() < this.slipElsewhere;
		const slip = isSlipped ? [pick(chance, slips).draw(chance, kit)] : [];
		const value = valueOnBench(
			{
				kit,
				household: { ...this.#own, ...other, ...lot },
				water: at.water ?? this.#portion(at),
				played: [...this.#playedIn(at), ...slip],
				...(at.volumeId === undefined ? {} : { volumeId: at.volumeId })
			},
			chance
		);
		const { variance } = readingScatter(method, { value });
		const share = Math.hypot(method.sampleWareSd, method.titrantWareSd, method.lotSd);
		const plusMinus = 2 * Math.sqrt(variance + (value * share) ** 2 + method.endPointSd ** 2);
		return this.#reading(value, Number(plusMinus.toFixed(2)));
	}

	/** Water of the tank then; day and night, and dosing not quite in balance, move it a little. */
	#portion({ daysAgo }: Setting): Truth['water'] {
		const wander =
			daysAgo === undefined
				? 0.04 * this.chance.normal()
				: this.changeDkh * -1 + Math.hypot(0.12, 0.06 * Math.sqrt(daysAgo)) * this.chance.normal();
		return { ...this.water, alkalinityDkh: Math.max(0.5, this.water.alkalinityDkh + wander) };
	}

	get trueValueDkh(): number {
		return this.water.alkalinityDkh;
	}

	test(from: 'first' | CheckId): Evidence {
		const setting: Setting = {
			...(from === 'first' ? { isFirst: true } : {}),
			...(from === 'otherHands' ? { hands: 'other' } : {}),
			...(from === 'freshLot' ? { lot: 'fresh' } : {}),
			...(from === 'freshSample' ? { portion: 'fresh' } : {})
		};
		return { kind: 'test', from, reading: this.#tested(setting) };
	}

	reference(): Evidence {
		const wrong = this.happened.filter(({ fault }) => fault.keeps === 'solution');
		const alkalinityDkh = wrong.reduce(
			(holds, { played }) => holds * (1 + (played.solutionShare ?? 0)) + (played.solutionDkh ?? 0),
			SOLUTION.nominal + this.#solution
		);
		const water = WaterSchema.parse({ matrix: 'sodiumChloride', alkalinityDkh, ph: 8.1 });
		return {
			kind: 'reference',
			reading: this.#tested({ water }),
			nominal: SOLUTION.nominal,
			nominalExpandedUncertainty: SOLUTION.plusMinus,
			matrix: 'sodiumChloride',
			solution: 'own'
		};
	}

	secondMethod(): Evidence {
		const portions = this.happened.filter(({ fault }) => fault.keeps === 'portion');
		const water = portions.reduce(
			(changed, { played }) => played.water?.(changed) ?? changed,
			this.#portion({})
		);
		const off = this.happened.reduce((sum, { played }) => sum + (played.secondDkh ?? 0), 0);
		// Grains dissolve for the other method as well: 1 mg of CaCO3 in 6 mL is 9.3 dKH.
		const grains = (water.carbonateGrainsMg / 6) * (1000 / 17.848);
		const value =
			water.alkalinityDkh + grains + off + this.#second + SECOND.sd * this.chance.normal();
		return {
			kind: 'secondMethod',
			reading: this.#reading(value, SECOND.plusMinus),
			method: 'kit',
			instrument: 'other'
		};
	}

	earlier(daysAgo: number): Evidence {
		return { kind: 'earlier', reading: this.#tested({ daysAgo }), daysAgo };
	}

	weighing(ware: 'sample' | 'titrant'): Evidence {
		const isSample = ware === 'sample';
		const factor = this.happened
			.filter(({ fault }) => fault.keeps === (isSample ? 'sampleWare' : 'titrantWare'))
			.reduce(
				(product, { played }) =>
					product * (isSample ? (played.sample ?? 1) : (played.drop ?? played.strength ?? 1)),
				isSample ? this.#own.sampleFactor : this.#own.dropFactor
			);
		const found = factor * (1 + 0.005 * this.chance.normal());
		return {
			kind: 'weighing',
			ware,
			foundOverNominal: Number(found.toFixed(3)),
			expandedUncertainty: 0.01
		};
	}

	answers(count: number, wrongShare: number): Evidence[] {
		const ids = this.happened.flatMap(({ fault }) => fault.id ?? []);
		const all = this.changeDkh === 0 ? ids : [...ids, 'realChange'];
		return answersOnBench(this.method, all, count, wrongShare, this.chance);
	}

	/** Some fault of those that fit the kit. */
	drawFault(among: readonly BenchFault[], weightOf: (fault: BenchFault) => number): BenchFault {
		return pickWeighted(this.chance, among.filter(fits(this.kit)), weightOf);
	}

	/** The tank has changed: more often down than up, half a dKH to two and a half. */
	change(): void {
		const isDown = this.chance.uniform() < 0.6;
		this.changeDkh = (isDown ? -1 : 1) * between(this.chance, 0.5, 2.5);
	}
}
