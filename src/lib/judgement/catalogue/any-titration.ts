import type { Cue, Fault } from './fault';
import { alkalinity, everyAnalyte } from './make-fault';

/**
 * What befalls any titration: ware, filling, drops, sample and bottle know nothing of what is titrated.
 * Their sizes are of the kit (its drop, its tip, its scale) or a share, and so hold for every analyte.
 */
const faultsOfAny: readonly string[] = [
	...['filledByLine', 'readByLine', 'tipFittedLate'].flatMap((id) => [id, `${id}Once`]),
	...['tipLoose', 'airLeft', 'hangingAtStart', 'titrantWareWet', 'titrantWareWetOnce'],
	...['overshot', 'hangingAtEnd', 'unsteadyHands', 'dropperTilted', 'dropperSqueezed'],
	...['wrongRim', 'wrongTick', 'parallax', 'dropsMiscounted', 'wrongRow'],
	'figureSlipped',
	...['sampleBesideMark', 'sampleBesideMarkOnce', 'sampleAir', 'sampleWareWet', 'wrongCup'],
	...['titrantStronger', 'titrantWatered', 'lotOff', 'bottlesSwapped'],
	...['sealSticks', 'titrantScaleOff', 'sampleScaleOff'],
	...['laboratoryPerKg', 'referenceWeighedOff']
];

/** With a syringe that is filled again they come out otherwise: see `refillFaults`. */
const ofOneFilling: readonly string[] = ['filledByLine', 'filledByLineOnce'];

/** Questions that speak of nothing that only one kind of titration has. */
const cuesOfAny: readonly string[] = [
	...['marksUsed', 'tip', 'tipDrop', 'titrantWareDry', 'plunger'],
	...['light', 'dropperHeld', 'dropsCounted', 'ownRepeats'],
	...['readAgain', 'sealEdge', 'eyeLevel', 'usedOrLeft', 'unitSeen', 'rowSeen', 'figuresSeen'],
	...['whereTaken', 'sampleMeasured', 'sampleWareRinsed', 'titrantBottle', 'wareChanged'],
	...['dosing', 'photometerCare', 'referenceScale']
];

/** Faults that come out otherwise in another kind of titration, and show themselves in the same answers. */
const cousins: Readonly<Record<string, readonly string[]>> = {
	otherLight: ['otherLightChelation'],
	usedForLeft: ['usedForLeftCalcium', 'usedForLeftHardness', 'usedForLeftMagnesium'],
	usedForLeftOnce: [
		'usedForLeftCalciumOnce',
		'usedForLeftHardnessOnce',
		'usedForLeftMagnesiumOnce'
	],
	unitTaken: ['calciumUnitTaken', 'magnesiumUnitTaken'],
	sampledAfterDosing: ['metalsAfterDosing'],
	photometerOff: ['photometerOffMetals'],
	hardFilm: ['vialTraces'],
	filledByLine: ['filledByLineAgain', 'lineAtRefills'],
	filledByLineOnce: ['filledByLineAgainOnce', 'lineAtRefillsOnce'],
	indicatorPale: ['indicatorTired']
};

/** A fault as it is registered: for every analyte, if it befalls any titration. */
export function faultOfAny(fault: Fault): Fault {
	if (!faultsOfAny.includes(fault.id)) return fault;
	return {
		...fault,
		analytes: everyAnalyte,
		...(ofOneFilling.includes(fault.id) ? { needs: { isFilledAgain: false } } : {})
	};
}

/** A question as it is registered: for one kind of titration only, if it speaks of what only that has. */
export function cueOfAny(cue: Cue): Cue {
	const { byFault, otherwise } = cue.likelihoods;
	const rows = Object.entries(byFault).flatMap(([fault, row]) =>
		(cousins[fault] ?? []).map((cousin) => [cousin, row] as const)
	);
	return {
		...cue,
		...(cuesOfAny.includes(cue.id) ? {} : { analytes: cue.analytes ?? alkalinity }),
		likelihoods: { otherwise, byFault: { ...Object.fromEntries(rows), ...byFault } }
	};
}
