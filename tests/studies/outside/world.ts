import type { Chance } from './chance';
import { drawKit, type OutsideKit } from './kits';
import { doneRight, type Doing, type Hands, type Lot, type Ware, type Water } from './titrate';

/** The kit's rival: what else can measure the tank, with its hidden offset and what it claims. */
export type SecondMethod = {
	method: 'kit' | 'photometer' | 'laboratory' | 'probe';
	name: string;
	share: number;
	offsetDkh: number;
	sdDkh: number;
	/** ± that goes with its readings, dKH, and what that ± was stated with. */
	claimedDkh: number;
	coverageFactor: 1 | 2;
	reports: 'total' | 'carbonate';
	/** Whether the report says that it leaves borate out. */
	saysSo: boolean;
};

/** A known solution: what the label says and what it holds. */
export type Solution = {
	nominalDkh: number;
	claimedDkh: number;
	water: Water;
};

/** Plain facts that could be asked for: what was so. */
export type Facts = Record<string, string>;

/** Everything that is so in one case. Nobody in the case knows it. */
export type World = {
	kit: OutsideKit;
	hands: Hands;
	otherHands: Hands;
	lot: Lot;
	freshLot: Lot;
	/** The bottle before this one. */
	earlierLot: Lot;
	lotAgeMonths: number;
	sampleWare: Ware;
	titrantWare: Ware;
	/** The tank now, well mixed: the value that is asked for. */
	tank: Water;
	/** The portion in the cup over the tank, dKH, and how often it was thinned. */
	cupDkh: number;
	cupShare: number;
	/** Change of the tank since the last readings that nobody knew of, dKH, and its age. */
	eventDkh: number;
	eventDaysAgo: number;
	/** Rise a day by what was dosed less what was consumed, as it was and as it is thought to be. */
	driftDkhPerDay: number;
	believedDriftDkhPerDay: number;
	second: SecondMethod;
	solution: Solution;
	/** Borate share of the tank's alkalinity. */
	borateShare: number;
	doing: Doing;
	facts: Facts;
};

function drawHands(c: Chance): Hands {
	return {
		endPh: c.normal(0.1),
		co2Left: c.between(0.4, 0.8),
		sampleShare: c.normal(0.008),
		parallaxMl: c.normal(0.002),
		endPhSd: c.between(0.03, 0.1)
	};
}

function drawSecond(c: Chance): SecondMethod {
	const method = c.weighted(['kit', 'photometer', 'laboratory', 'probe'] as const, (name) =>
		name === 'kit' ? 4 : name === 'photometer' ? 3 : 1
	);
	const sizes = {
		kit: { share: 0.03, offsetDkh: 0.15, sdDkh: 0.15, claimedDkh: 0.6 },
		photometer: { share: 0.02, offsetDkh: 0.2, sdDkh: 0.12, claimedDkh: 0.5 },
		laboratory: { share: 0.012, offsetDkh: 0.03, sdDkh: 0.05, claimedDkh: 0.25 },
		probe: { share: 0.01, offsetDkh: 0.04, sdDkh: 0.05, claimedDkh: 0.25 }
	}[method];
	// Some makers state one standard deviation, some are too sure of themselves.
	const coverageFactor = c.happens(0.15) ? 1 : 2;
	const boldness = c.weighted([1, 0.6], (factor) => (factor === 1 ? 4 : 1));
	const leavesBorate = method === 'laboratory' && c.happens(0.3);
	return {
		method,
		name: { kit: 'Other kit', photometer: 'Photometer', laboratory: 'Laboratory', probe: 'Probe' }[
			method
		],
		share: c.normal(sizes.share),
		offsetDkh: c.normal(sizes.offsetDkh),
		sdDkh: sizes.sdDkh,
		claimedDkh: (sizes.claimedDkh * boldness * coverageFactor) / 2,
		coverageFactor,
		reports: leavesBorate ? 'carbonate' : 'total',
		saysSo: true
	};
}

/** A solution from a stock of weighed bicarbonate or dried carbonate, made with ordinary care. */
function drawSolution(c: Chance): Solution {
	const nominalDkh = c.pick([7, 8, 8, 10]);
	const isCarbonate = c.happens(0.4);
	const made = nominalDkh * (1 + c.normal(0.008)) + c.normal(0.03);
	return {
		nominalDkh,
		claimedDkh: Math.round(nominalDkh * c.between(0.015, 0.04) * 100) / 100,
		water: {
			dkh: made,
			matrix: c.weighted(['purified', 'sodiumChloride', 'seawater'] as const, (matrix) =>
				matrix === 'purified' ? 5 : 2
			),
			carbonPerAlkalinity: isCarbonate ? 0.5 : 1
		}
	};
}

/** A case in which everything is ordinary: small differences, nothing wrong. */
export function drawWorld(c: Chance): World {
	const kit = drawKit(c);
	const lotAgeMonths = Math.round(c.between(0, 18));
	// A well-closed bottle loses about 0.1 % a month.
	const lost = 0.001 * c.factor(0.6) * lotAgeMonths;
	const isDropper = kit.figures.delivery === 'dropper';
	const drift = c.normal(0.03);
	// Some fill and read by the liquid line: that comes out right.
	const readsLine = kit.figures.delivery === 'syringe' && c.happens(0.15);
	return {
		kit,
		hands: drawHands(c),
		otherHands: drawHands(c),
		lot: { strength: (1 + c.normal(0.012)) / (1 - lost) },
		freshLot: { strength: 1 + c.normal(0.012) },
		earlierLot: { strength: 1 + c.normal(0.012) },
		lotAgeMonths,
		sampleWare: { scale: 1 + c.normal(0.015) },
		titrantWare: { scale: 1 + c.normal(isDropper ? 0.035 : 0.012) },
		tank: {
			dkh: Math.min(12.5, Math.max(5, 8.2 + c.normal(1))),
			matrix: 'seawater',
			carbonPerAlkalinity: c.between(0.85, 0.95)
		},
		cupDkh: c.normal(0.05),
		cupShare: 1,
		eventDkh: 0,
		eventDaysAgo: 0,
		driftDkhPerDay: drift,
		believedDriftDkhPerDay: drift + c.normal(0.015),
		second: drawSecond(c),
		solution: drawSolution(c),
		borateShare: c.between(0.04, 0.06),
		doing: { ...doneRight, readsLine },
		facts: readsLine ? { filledBy: 'line', readBy: 'line' } : {}
	};
}
