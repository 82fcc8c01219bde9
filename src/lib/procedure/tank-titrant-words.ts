import { titrantOf, type Kit, type TitrantOfAnalyte } from '../kits';
import type { SlipKind } from '../observation';

/** What is said at the drops where it depends on what is dropped in, and on nothing else. */
export type TitrantWords = {
	/** The trap in dropping; at most fourteen words. */
	dropping: string;
	/** The colour has stood its time: what may come later. */
	afterwards(endColour: string): string;
	/** It had stood its time, and the old colour came back. */
	cameBack(endColour: string): string;
	/** What time does to a vial that waits between two drops. */
	paused: string;
	/** Slips of the other kind of titration, which are none here. */
	noSlips: readonly SlipKind[];
};

/**
 * Acid drives out carbon dioxide, so that an end that stood may fade and is the end all the same. EDTA
 * is slow near the end and takes back what the hydroxide holds: a colour that turns back was not the end
 * (common practice, no source).
 */
const words: Record<TitrantOfAnalyte['kind'], TitrantWords> = {
	strongAcid: {
		dropping: 'White light. Single drops once a flash takes 3 s to fade.',
		afterwards: () =>
			'If the old colour comes back later, leave it: carbon dioxide leaves. The mark stands.',
		cameBack: () =>
			'It had stayed its time: that was the end. What comes back later is carbon dioxide leaving.',
		paused:
			'Carbon dioxide leaves and water evaporates meanwhile. A fresh sample is surer than going on.',
		noSlips: []
	},
	edta: {
		dropping: 'White light. In between is not the end; single drops, 3 s apart.',
		afterwards: (endColour) =>
			`If ${endColour} turns back within a minute, it was not the end: one more drop, and swirl.`,
		cameBack: (endColour) =>
			`${capital(endColour)} that turns back was not the end: some was still held back. One more drop, and swirl.`,
		paused:
			'Some settles out or takes up carbon dioxide meanwhile. A fresh sample is surer than going on.',
		noSlips: ['chasedColour', 'swirledOddly']
	}
};

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The words for what this kit drops in. */
export const titrantWordsOf = (kit: Pick<Kit, 'analyte'>): TitrantWords =>
	words[titrantOf[kit.analyte].kind];

const cautions: Record<Kit['reagents'][number]['role'], string | null> = {
	indicator: null,
	base: 'Strong base: keep it off eyes and skin.',
	buffer: 'Ammonia: do not breathe over it.'
};

/** What to beware of with a reagent while it is in the hand; null where there is nothing unusual. */
export function reagentCaution({ role }: Kit['reagents'][number]): string | null {
	return cautions[role];
}
