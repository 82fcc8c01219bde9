import { substances } from '$lib/judgement';
import type { Analyte } from '$lib/kits';

/** Whether there is a recipe for a known solution of something. */
export const isMadeHere = (analyte: Analyte): boolean =>
	Object.values(substances).some((substance) => substance.analyte === analyte);

/** Of what a known amount is added to water from the tank; of others it says too little. */
const added: readonly Analyte[] = ['alkalinity'];
export const isAddedHere = (analyte: Analyte): boolean => added.includes(analyte);

/** What is worked out of a curve of pH under acid. */
const ofAcid: readonly Analyte[] = ['alkalinity'];
export const hasCurve = (analyte: Analyte): boolean => ofAcid.includes(analyte);
