import { numeralAt, valueFromMark } from '../kits';
import type { Account, ReadOff } from './account';
import { contentsOfSample } from './deeds-sample';
import { withDoses } from './dosing';
import { endVolumeMl } from './end-point';
import { kindOf } from './titration-kind';

/** From an account to what is reported in its world: the end, the mark that stands there, the value. */

/** A numeral turned to the other end of the scale, and back: the same sum both ways. */
export function asMeant({ isReversed, kit }: Account, numeral: number): number {
	return isReversed && kit.delivery.by === 'syringe' ? kit.delivery.capacityMl - numeral : numeral;
}

/** Where the account's hands come to an end, mL of titrant in the vial; null when there is no end to see. */
export function endOf(account: Account): number | null {
	const endMl = chemicalEndOf(account);
	return endMl === null ? null : Math.min(endMl, mostMlOf(account.kit));
}

/** Where the end of the account's sample lies, however often it would have to be filled again, mL; null for none. */
export function chemicalEndOf(account: Account): number | null {
	const { chemistry, kit } = account;
	const kind = kindOf(kit);
	const { doses, bottles, grainsMol, passed } = chemistry;
	const dosed = kit.reagents
		.filter(({ id }) => (doses[id] ?? 0) > 0)
		.reduce(
			(contents, { id }) => withDoses(kit, contents, id, doses[id] ?? 0, bottles),
			contentsOfSample(kit, chemistry.water, chemistry.sample)
		);
	const sample = kind.withPassed(kind.withDissolvedGrains(dosed, grainsMol), passed);
	return endVolumeMl(kit, sample, chemistry.titrantMolPerL);
}

/** An end beyond the only filling that the leaflet has is not waited for: hands stop when it is empty. */
const mostMlOf = ({ delivery }: Account['kit']): number =>
	delivery.by === 'dropper' || delivery.refilled ? Infinity : delivery.capacityMl;

/** Travel of the seal, or fall of the level, that brought the titrant in, mL. */
export function travelOf(account: Account, endMl: number | null = null): number {
	const inVialMl = endMl === null ? account.stoppedAtMl : endMl + account.lagMl;
	return (
		inVialMl +
		account.hangingAtEndMl +
		account.wipedMl +
		account.airPushedMl -
		account.hungAtStartMl -
		account.leakedMl
	);
}

/** Numeral, or drop count, that stands there at the end in the account's world. */
export function stoodNumeral(account: Account, endMl: number | null = null): number {
	const { kit } = account;
	if (account.readBy === 'drops') {
		const inVialMl = endMl === null ? account.stoppedAtMl : endMl + account.lagMl;
		const { own, tilt, squeeze, chance } = account.dropFactors;
		return inVialMl / (kit.delivery.dropMl * own * tilt * squeeze * chance);
	}
	const travel = travelOf(account, endMl);
	if (account.readBy === 'level' || kit.delivery.by !== 'syringe')
		return account.startLevelMl + travel - account.refilledMl;
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
export function leafletValue(account: Account, numeral: number): number {
	const { kit, readBy, nominalSampleMl: sampleVolumeMl } = account;
	const { delivery } = kit;
	if (readBy === 'drops' || delivery.by === 'dropper')
		return valueFromMark(kit, { drops: Math.max(0, numeral), sampleVolumeMl }).value;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const usedMl =
		(isDown ? delivery.capacityMl - numeral : numeral) +
		account.refilledMl -
		account.miscountedRefillMl -
		account.forgottenRefillMl;
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

const sumOf = (off: ReadOff) => off.parallax + off.rim + off.mistake + off.rounding;

/** What is reported in the account's world, in the kit's unit. */
export function reportedOf(account: Account, endMl: number | null): number {
	const numeral = asMeant(account, stoodNumeral(account, endMl) + sumOf(account.readOff));
	return leafletValue(account, numeral) * account.conversionFactor;
}
