import { houseSyringeKit } from '$lib/kits';

/** Cautions that hold for most kits, offered so that nobody has to type them. */
export const usualCautions: readonly string[] = houseSyringeKit.hazards;
