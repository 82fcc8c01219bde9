import { numeralAt, valueFromMark, type Kit } from '../kits';

/** Value that a leaflet gives for so much titrant; null where its table does not reach. */
function valueAt(kit: Kit, usedMl: number, sampleVolumeMl: number) {
	const { delivery } = kit;
	try {
		if (delivery.by === 'dropper')
			return valueFromMark(kit, { drops: usedMl / delivery.dropMl, sampleVolumeMl });
		// From a made-up start, so that the end stays on the scale however much is used.
		const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
		const markMl = isDown ? 0 : delivery.capacityMl;
		const startMarkMl = isDown ? usedMl : delivery.capacityMl - usedMl;
		return valueFromMark(kit, { markMl, startMarkMl, sampleVolumeMl });
	} catch {
		return null;
	}
}

/** A use of titrant at which any leaflet gives a value: half a filling, or a few drops. */
function anyUse(kit: Kit, sampleVolumeMl: number): number | null {
	const { delivery } = kit;
	const wholeMl = delivery.by === 'dropper' ? 40 * delivery.dropMl : delivery.capacityMl;
	for (let part = 1; part <= 64; part++) {
		// Halves, quarters and so on of the whole, from the middle outwards.
		const share = ((part * 0.618034) % 1) * 0.999;
		const usedMl = part === 1 ? wholeMl / 2 : wholeMl * share;
		if (valueAt(kit, usedMl, sampleVolumeMl)) return usedMl;
	}
	return null;
}

/**
 * Titrant that a value would take with this kit and sample, mL: the leaflet's conversion turned
 * round. Beyond the leaflet's table its last slope is followed; never below 0. Null for a leaflet
 * that gives no value at all.
 *
 * @param value in the kit's unit
 * @throws RangeError naming the field when a number is not finite or the sample not above 0
 */
export function usedMlFor(kit: Kit, value: number, sampleVolumeMl: number): number | null {
	if (!Number.isFinite(value)) throw new RangeError(`value must be a number; found ${value}`);
	if (!(sampleVolumeMl > 0))
		throw new RangeError(`sampleVolumeMl must be above 0; found ${sampleVolumeMl}`);
	const middle = anyUse(kit, sampleVolumeMl);
	if (middle === null) return null;
	let [low, high] = [0, 4 * middle];
	let best = middle;
	for (let i = 0; i < 60; i++) {
		const usedMl = (low + high) / 2;
		const found = valueAt(kit, usedMl, sampleVolumeMl);
		const isTooLow = found ? found.value < value : usedMl < middle;
		if (found) best = usedMl;
		if (isTooLow) low = usedMl;
		else high = usedMl;
	}
	const end = valueAt(kit, best, sampleVolumeMl);
	return end ? Math.max(0, best + (value - end.value) / end.valuePerMl) : null;
}

/** What 1 mL of titrant is worth with this sample, in the kit's unit; null as above. */
export function valuePerMlFor(kit: Kit, sampleVolumeMl: number): number | null {
	if (!(sampleVolumeMl > 0)) return null;
	const usedMl = anyUse(kit, sampleVolumeMl);
	return usedMl === null ? null : (valueAt(kit, usedMl, sampleVolumeMl)?.valuePerMl ?? null);
}

export type UseOfFilling = {
	/** Expected to be used, and there to be used, mL. */
	expectedMl: number;
	availableMl: number;
	isEnough: boolean;
	/** What one full filling holds, mL. */
	capacityMl: number;
	/** Would one full filling be enough? */
	isFullEnough: boolean;
};

/** Room for the end to lie later than at the last test: this share more, and two drops. */
const MORE = { share: 0.1, drops: 2 };

/**
 * Is there titrant enough for the value that is expected?
 *
 * @param startMl numeral at which the seal (or the level) stands; the full mark when left out
 */
export function useOfFilling(
	kit: Kit,
	expected: number,
	sampleVolumeMl: number,
	startMl?: number
): UseOfFilling | null {
	const { delivery } = kit;
	if (delivery.by === 'dropper') return null;
	const expectedMl = usedMlFor(kit, expected, sampleVolumeMl);
	if (expectedMl === null) return null;
	// Whether the numeral can be is another question: off the scale there is nothing, or all.
	const leftMl =
		startMl === undefined
			? delivery.capacityMl
			: delivery.by === 'syringe'
				? numeralAt(delivery, startMl)
				: delivery.capacityMl - startMl;
	const availableMl = Math.max(0, leftMl);
	const neededMl = expectedMl * (1 + MORE.share) + MORE.drops * delivery.dropMl;
	return {
		expectedMl,
		availableMl,
		isEnough: availableMl >= neededMl,
		capacityMl: delivery.capacityMl,
		isFullEnough: delivery.capacityMl >= neededMl
	};
}
