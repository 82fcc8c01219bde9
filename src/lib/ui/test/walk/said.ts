import type { Step } from '$lib/kits';
import { spokenInstruction, tankInstruction, type TankTitration } from '$lib/procedure';
import { dropsOf } from './drops';

/** What is said at the place where a titration stands. */
export type SaidNow = {
	step: Step | null;
	n: number;
	of: number;
	/** To be read. */
	text: string;
	/** The same for a voice. */
	spoken: string;
	trap: string | null;
};

/** While drops are added the question changes with what was seen. */
function atTheDrops(titration: TankTitration, holdsSeconds: number): string | null {
	const { phase } = dropsOf(titration);
	if (phase === 'turned') return `Swirl, wait ${holdsSeconds} seconds. Does the new colour stay?`;
	return phase === 'holding' ? 'Noted. No more drops.' : null;
}

/** The instruction of the moment, and where in the walk it stands. */
export function saidOf(titration: TankTitration): SaidNow {
	const instruction = tankInstruction(titration);
	if (!instruction) {
		const { length } = titration.steps;
		return { step: null, n: length, of: length, text: '', spoken: '', trap: null };
	}
	const { step, n, of, trap } = instruction;
	const asked = step.kind === 'titrate' ? atTheDrops(titration, step.holdsSeconds) : null;
	return {
		step,
		n,
		of,
		text: asked ?? instruction.text,
		spoken: asked ?? spokenInstruction(titration) ?? instruction.text,
		trap
	};
}
