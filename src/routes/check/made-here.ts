import { substances } from '$lib/judgement';
import type { Analyte } from '$lib/kits';

/** Whether there is a recipe for a known solution of something. */
export const isMadeHere = (analyte: Analyte): boolean =>
	Object.values(substances).some((substance) => substance.analyte === analyte);
