import { addAlkalinity, addIndicator, type Vessel } from '../chemistry';
import { dropperDropFactor } from '../glassware';
import { numeralAt, valueFromMark, type Kit } from '../kits';
import type { Marks, Slip, SlipKind } from '../observation';
import { cleanEnd } from './calibrate';
import { vesselOfSample } from './deeds-sample';
import { endVolumeMl } from './end-point';
import { chosenVolumeMl, type BenchState, type MeasuredSample } from './state';
import type { Water } from './world';

/** Parts of a reading's offset: the eye's height, the wrong edge, a mistake, and mere rounding. */
export type ReadOff = { parallax: number; rim: number; mistake: number; rounding: number };
const noReadOff: ReadOff = { parallax: 0, rim: 0, mistake: 0, rounding: 0 };
const sumOf = (off: ReadOff) => off.parallax + off.rim + off.mistake + off.rounding;

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
		indicatorFactor: number;
		titrantMolPerL: number;
		/** Share of the sample's carbon still there at the stop: what the swirling did. */
		carbonKept: number;
		/** Alkalinity that grains gave off until the stop, mol. */
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
	/** Full mark of the seal, and air between line and seal, when filled; null without a syringe. */
	filledTo: { sealMl: number; cushionMl: number } | null;
	/** Numeral of a burette when filled. */
	startLevelMl: number;
	refilledMl: number;
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
	/** What `chemistry.carbonKept` would be after the leaflet's own swirling. */
	cleanCarbonKept: number;
	/** A seal that sticks and jumps made the stop coarser than a drop. */
	sealSticks: boolean;
};

/** A numeral turned to the other end of the scale, and back: the same sum both ways. */
function asMeant({ isReversed, kit }: Account, numeral: number): number {
	return isReversed && kit.delivery.by === 'syringe' ? kit.delivery.capacityMl - numeral : numeral;
}

/** What the learner declared. */
export type Declared = { marks: Marks; value: number };

/** How the offset of a reading falls to the slips that were found; the rest is rounding. */
function readOffOf(total: number, slips: readonly Slip[]): ReadOff {
	const sizeOf = (kind: SlipKind) =>
		slips.filter((slip) => slip.kind === kind).reduce((sum, slip) => sum + (slip.sizeMl ?? 0), 0);
	const parallax = sizeOf('parallax');
	const rim = sizeOf('wrongRim');
	const rest = total - parallax - rim;
	const isMistake = slips.some(
		(slip) => slip.kind === 'misread' || slip.kind === 'dropsMiscounted'
	);
	return { parallax, rim, mistake: isMistake ? rest : 0, rounding: isMistake ? 0 : rest };
}

/**
 * The account of a finished titration.
 *
 * @param slips those found in its log
 * @throws RangeError when the marks do not hold what the kit is read by
 */
export function accountOf(state: BenchState, declared: Declared, slips: readonly Slip[]): Account {
	const { kit, delivery, sampleVessel, vessel } = state;
	const carbonKept =
		vessel && sampleVessel && sampleVessel.dicMol > 0
			? Math.min(1.2, vessel.dicMol / sampleVessel.dicMol)
			: 1;
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? 1;
	const grainsAtStart =
		(state.truth.water.carbonateGrainsMg / 1000 / 100.0869) * (state.sample.markMl / nominalMl);
	const draft: Account = {
		kit,
		chemistry: {
			water: state.truth.water,
			sample: state.sample,
			doses: state.doses,
			indicatorFactor: state.truth.indicator?.strengthFactor ?? 1,
			titrantMolPerL:
				(kit.contents?.titrant.molPerL ?? 0) * (state.truth.titrant?.strengthFactor ?? 1),
			carbonKept,
			grainsMol: Math.max(0, grainsAtStart - state.grainsMol)
		},
		lagMl: 0,
		stoppedAtMl: state.inVialMl,
		airPushedMl: state.airPushedMl,
		hungAtStartMl: state.hungAtStartMl,
		leakedMl: state.leakedMl,
		hangingAtEndMl: delivery.hangingMl,
		filledTo: state.filledTo,
		startLevelMl: 0,
		refilledMl: state.refilledMl,
		dropFactors: dropFactorsOf(state),
		readBy: readByOf(declared.marks, delivery.by),
		readOff: noReadOff,
		isReversed:
			kit.delivery.by === 'syringe' && slips.some((slip) => slip.kind === 'scaleReversed'),
		conversionFactor: 1,
		nominalSampleMl: chosenVolumeMl(state),
		cleanCarbonKept: cleanEnd(kit, state.truth.water).carbonKept,
		sealSticks: (state.truth.ware?.stickyJumpMl ?? 0) > 0
	};
	const end = endOf(draft);
	const withLag = {
		...draft,
		lagMl: end === null ? kit.delivery.dropMl / 2 : state.inVialMl - end
	};
	const withStart =
		delivery.by === 'burette'
			? { ...withLag, startLevelMl: (delivery.burette.levelMl ?? 0) - travelOf(withLag) }
			: withLag;
	const typed = typedNumeral(declared.marks, withStart.readBy);
	const stood = stoodNumeral(withStart);
	const withRead = {
		...withStart,
		readOff: readOffOf(asMeant(withStart, typed) - stood, slips)
	};
	const byLeaflet = leafletValue(withRead, typed);
	return {
		...withRead,
		conversionFactor: byLeaflet !== 0 ? declared.value / byLeaflet : 1
	};
}

function dropFactorsOf(state: BenchState): Account['dropFactors'] {
	const own = state.truth.ware?.dropFactor ?? 1;
	const { delivery } = state;
	const isDropper = delivery.by === 'dropper';
	const tilt = isDropper ? dropperDropFactor(delivery.tiltDegrees, false) : 1;
	const squeeze = isDropper ? dropperDropFactor(0, delivery.squeezedHard) : 1;
	const meanMl = state.dropsSinceFill > 0 ? state.inVialMl / state.dropsSinceFill : 0;
	const byCause = state.kit.delivery.dropMl * own * tilt * squeeze;
	return { own, tilt, squeeze, chance: meanMl > 0 ? meanMl / byCause : 1 };
}

function readByOf(marks: Marks, by: 'syringe' | 'dropper' | 'burette'): Account['readBy'] {
	if (by === 'dropper') return 'drops';
	if (by === 'burette') return 'level';
	return marks.sealMl === undefined && marks.lineMl !== undefined ? 'line' : 'seal';
}

export function typedNumeral(marks: Marks, readBy: Account['readBy']): number {
	const typed = {
		seal: marks.sealMl,
		line: marks.lineMl,
		level: marks.levelMl,
		drops: marks.drops
	}[readBy];
	if (typed === undefined) throw new RangeError(`marks must hold the ${readBy} that was read`);
	return typed;
}

/** Where the account's end colour lies, mL of titrant in the vial; null when there is no end to see. */
export function endOf(account: Account): number | null {
	const { chemistry, kit } = account;
	return endVolumeMl(
		startVessel(account),
		chemistry.carbonKept,
		chemistry.titrantMolPerL,
		kit.endPoint.hueDegrees ?? 340
	);
}

function startVessel({ chemistry, kit }: Account): Vessel {
	let vessel = vesselOfSample(chemistry.water, chemistry.sample);
	for (const reagent of kit.reagents) {
		const doses = chemistry.doses[reagent.id] ?? 0;
		const unitMl = reagent.dose.unit === 'mL' ? reagent.dose.amount : (reagent.dose.unitMl ?? 0.03);
		if (doses > 0)
			vessel = addIndicator(vessel, {
				volumeMl: unitMl * doses,
				dyes: (kit.contents?.dyes[reagent.id] ?? []).map((dye) => ({
					...dye,
					molPerL: dye.molPerL * chemistry.indicatorFactor
				}))
			});
	}
	return addAlkalinity(vessel, {
		alkalinityMol: 2 * chemistry.grainsMol,
		dicMol: chemistry.grainsMol
	});
}

/** Travel of the seal, or fall of the level, that brought the titrant in, mL. */
function travelOf(account: Account, endMl: number | null = null): number {
	const inVialMl = endMl === null ? account.stoppedAtMl : endMl + account.lagMl;
	return (
		inVialMl +
		account.hangingAtEndMl +
		account.airPushedMl -
		account.hungAtStartMl -
		account.leakedMl
	);
}

/** Numeral, or drop count, that stands there at the end in the account's world. */
function stoodNumeral(account: Account, endMl: number | null = null): number {
	const { kit } = account;
	if (account.readBy === 'drops') {
		const inVialMl = endMl === null ? account.stoppedAtMl : endMl + account.lagMl;
		const { own, tilt, squeeze, chance } = account.dropFactors;
		return inVialMl / (kit.delivery.dropMl * own * tilt * squeeze * chance);
	}
	const travel = travelOf(account, endMl);
	if (account.readBy === 'level' || kit.delivery.by !== 'syringe')
		return account.startLevelMl + travel;
	const filled = account.filledTo ?? { sealMl: kit.delivery.capacityMl, cushionMl: 0 };
	// Filled again on the way: the seal stands where the last filling and the travel since put it.
	const sealMl = filled.sealMl - travel + account.refilledMl;
	const fromNozzle =
		account.readBy === 'seal' ? sealMl : sealMl - filled.cushionMl - account.leakedMl;
	return numeralAt(kit.delivery, fromNozzle);
}

/**
 * What the leaflet makes of a numeral. Other worlds may leave the scale or its table; there the last
 * slope goes on.
 */
function leafletValue(account: Account, numeral: number): number {
	const { kit, readBy, nominalSampleMl: sampleVolumeMl } = account;
	const { delivery } = kit;
	if (readBy === 'drops' || delivery.by === 'dropper')
		return valueFromMark(kit, { drops: Math.max(0, numeral), sampleVolumeMl }).value;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const usedMl = (isDown ? delivery.capacityMl - numeral : numeral) + account.refilledMl;
	const onScale = Math.min(delivery.capacityMl, Math.max(0, usedMl));
	const { value, valuePerMl } = valueFromMark(kit, {
		markMl: isDown ? delivery.capacityMl - onScale : onScale,
		sampleVolumeMl
	});
	return value + (usedMl - onScale) * valuePerMl;
}

/** Value of 1 mL of titrant in the middle of the leaflet's range, at the sample volume used. */
export function valuePerMlOf({ kit, nominalSampleMl: sampleVolumeMl }: Account): number {
	const middle =
		kit.delivery.by === 'dropper' ? { drops: 10 } : { markMl: kit.delivery.capacityMl / 2 };
	return valueFromMark(kit, { ...middle, sampleVolumeMl }).valuePerMl;
}

/** What is reported in the account's world, in the kit's unit. */
export function reportedOf(account: Account, endMl: number | null): number {
	const numeral = asMeant(account, stoodNumeral(account, endMl) + sumOf(account.readOff));
	return leafletValue(account, numeral) * account.conversionFactor;
}
