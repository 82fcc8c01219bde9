import type { Kit } from '../kits';
import type { Bottles } from './dosing';
import type { MeasuredSample } from './state';
import type { Passed } from './titration-kind';
import type { Water } from './world';

/** Parts of a reading's offset: the eye's height, the wrong edge, a mistake, and mere rounding. */
export type ReadOff = { parallax: number; rim: number; mistake: number; rounding: number };

/**
 * A finished titration as an account: every cause on its own line, the policy of the hands as
 * deviations, and the water's own chemistry behind one number, the end volume. Changing a line and
 * adding up again says what would have been reported in that other world.
 */
export type Account = {
	kit: Kit;
	/** What chemistry depends on. */
	chemistry: {
		water: Water;
		sample: MeasuredSample;
		doses: Record<string, number>;
		bottles: Bottles;
		titrantMolPerL: number;
		/** What time and motion had done by the stop. */
		passed: Passed;
		/** Calcium carbonate that had dissolved from grains until the stop, mol. */
		grainsMol: number;
	};
	/** Stopped so much titrant after the end of that world, mL; `stoppedAtMl` where there is none. */
	lagMl: number;
	stoppedAtMl: number;
	/** Travel that gave no liquid, and liquid that came without travel, mL. */
	airPushedMl: number;
	hungAtStartMl: number;
	leakedMl: number;
	hangingAtEndMl: number;
	/** Titrant that was pushed out and wiped off. */
	wipedMl: number;
	/** Full mark of the seal, and air between line and seal, when filled; null without a syringe. */
	filledTo: { sealMl: number; cushionMl: number } | null;
	/** Numeral of a burette when filled. */
	startLevelMl: number;
	refilledMl: number;
	/** What was drawn in again over what was counted of it, where each filling was taken to end at the full mark. */
	miscountedRefillMl: number;
	/** What was drawn in again and not reckoned with at all, mL. */
	forgottenRefillMl: number;
	/** Mean drop that fell over the kit's nominal one, by cause: the bottle, tilt, force, chance. */
	dropFactors: { own: number; tilt: number; squeeze: number; chance: number };
	readBy: 'seal' | 'line' | 'level' | 'drops';
	/** Typed over what stood there, as numerals or drops, by cause. */
	readOff: ReadOff;
	/** The scale was read from its other end: `readOff` is then what remains when that is put right. */
	isReversed: boolean;
	/** Reported value over what the leaflet makes of the typed mark. */
	conversionFactor: number;
	nominalSampleMl: number;
	/** What `chemistry.passed` would be after the leaflet's own waiting and swirling. */
	cleanPassed: Passed;
	/** A seal that sticks and jumps made the stop coarser than a drop. */
	sealSticks: boolean;
};
