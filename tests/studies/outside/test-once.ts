import type { Reading } from '../../../src/lib/observation';
import type { Chance } from './chance';
import type { Happened, Hidden } from './happen';
import { dkhIn, type OutsideKit } from './kits';
import type { Clings } from './mistake';
import { titrate, type Doing, type Lot, type Water } from './titrate';

/** In what a test differs from the one in question; left out is the same. */
export type Setting = {
	isFirst?: boolean;
	hands?: 'own' | 'other';
	lot?: 'own' | 'fresh' | 'earlier';
	/** Without the portion: another water is in the vial. */
	water?: Water;
	isFreshCup?: boolean;
	sampleRatio?: number;
	daysAgo?: number;
	/** How surely a habit shows again: less where somebody takes care. */
	habitShows?: number;
};

function isAtWork({ mistake, isHabit, beganDaysAgo }: Happened, at: Setting, c: Chance): boolean {
	const showsAgain = c.happens(at.habitShows ?? 0.9);
	if (at.isFirst) return true;
	if ((at.daysAgo ?? 0) > beganDaysAgo) return false;
	const isByOther = at.hands === 'other';
	const held: Record<Clings, boolean> = {
		slip: isHabit && showsAgain && !isByOther,
		hands: !isByOther,
		lot: at.lot === undefined || at.lot === 'own',
		sampleWare: true,
		titrantWare: true,
		// A careful rinse clears a vial sometimes.
		vial: showsAgain,
		cup: !at.isFreshCup && at.water === undefined && at.daysAgo === undefined,
		kit: true
	};
	return held[mistake.clings ?? 'kit'];
}

/** The bottle as strong as it was then: evaporation goes on all the time, other things begin at once. */
function lotThen({ world, before, happened }: Hidden, at: Setting): Lot {
	if (at.lot === 'fresh') return world.freshLot;
	if (at.lot === 'earlier') return world.earlierLot;
	const daysAgo = at.daysAgo ?? 0;
	const change = world.lot.strength - before.lot.strength;
	const cause = happened.find(({ mistake }) => mistake.class === 'reagent' && mistake.change);
	if (!cause) return world.lot;
	const isGradual = cause.mistake.id === 'titrantEvaporated';
	const share = isGradual
		? Math.max(0, 1 - daysAgo / cause.beganDaysAgo)
		: Number(daysAgo <= cause.beganDaysAgo);
	return { strength: before.lot.strength + change * share };
}

function wareThen(hidden: Hidden, which: 'sampleWare' | 'titrantWare', daysAgo: number) {
	const cause = hidden.happened.find(
		({ mistake }) => mistake.clings === which && mistake.change !== undefined
	);
	const isOld = cause !== undefined && daysAgo > cause.beganDaysAgo;
	return (isOld ? hidden.before : hidden.world)[which];
}

/** What is in the cup that the test in question was taken from. */
export function cupWater({ world }: Hidden): Water {
	return { ...world.tank, dkh: (world.tank.dkh + world.cupDkh) * world.cupShare };
}

/** Water of a portion taken anew, with more thought: a dose may still not be mixed in. */
export function freshWater({ world }: Hidden, c: Chance): Water {
	const left = Math.abs(world.cupDkh) > 0.3 && c.happens(0.15) ? world.cupDkh / 3 : 0;
	return { ...world.tank, dkh: world.tank.dkh + left + c.normal(0.05) };
}

/** A test by the kit in question, in dKH, with the marks as they were read. */
export function testOnce(hidden: Hidden, at: Setting, c: Chance): ReturnType<typeof titrate> {
	const { world, happened } = hidden;
	const daysAgo = at.daysAgo ?? 0;
	const doing = happened.reduce<Doing>(
		(done, one) =>
			one.mistake.bend && isAtWork(one, at, c)
				? { ...done, ...one.mistake.bend(one.size, done) }
				: done,
		{ ...world.doing }
	);
	return titrate(
		{
			kit: world.kit,
			hands: at.hands === 'other' ? world.otherHands : world.hands,
			lot: lotThen(hidden, at),
			sampleWare: wareThen(hidden, 'sampleWare', daysAgo),
			titrantWare: wareThen(hidden, 'titrantWare', daysAgo),
			water: at.water ?? (at.isFreshCup ? freshWater(hidden, c) : cupWater(hidden)),
			doing,
			sampleRatio: at.sampleRatio ?? 1
		},
		c
	);
}

const toStep = (value: number, step: number) =>
	Number((Math.round(value / step) * step).toFixed(6));

/** A value in the kit's unit, rounded as people write it down. */
export function written({ figures, writtenTo }: OutsideKit, dkh: number): number {
	return toStep(dkh / dkhIn[figures.unit], writtenTo);
}

/** ± of the kit as a careful leaflet would put it, dKH: a drop, the eye, and shares. */
export function leafletDkh({ dkhPerMl, figures }: OutsideKit, dkh: number, ratio = 1): number {
	const step = (dkhPerMl * figures.dropMl) / ratio;
	// Drops of a bottle differ from the leaflet's more than a scale does.
	const share = figures.delivery === 'dropper' ? 0.045 : 0.03;
	return 2 * Math.hypot(share * Math.abs(dkh), 0.13, 0.35 * step);
}

/** A reading of the kit's unit; ± is never finer than a step of writing. */
export function readingOf(
	kit: OutsideKit,
	id: string,
	label: string,
	dkh: number,
	plusMinusDkh: number
): Reading {
	const plusMinus = Math.max(kit.writtenTo, written(kit, plusMinusDkh));
	return {
		id,
		label,
		value: written(kit, dkh),
		expandedUncertainty: plusMinus,
		unit: kit.figures.unit
	};
}
