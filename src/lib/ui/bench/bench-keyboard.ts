import type { BenchHands } from './bench-hands.svelte';
import { deedOf, isForFocus, type BenchDeed } from './keys';
import type { BenchSettings } from './settings.svelte';

/**
 * Single keys on the bench. What has the focus comes first; where a deed has no place now, its key
 * is left to the page.
 */
export function benchKeyboard(bench: {
	hands: BenchHands;
	settings: () => BenchSettings;
	/** Does this deed belong to what is being done now? */
	belongs: (deed: BenchDeed) => boolean;
	compare: () => void;
	stays: () => void;
}): { down: (event: KeyboardEvent) => void; up: (event: KeyboardEvent) => void } {
	const { hands, settings } = bench;

	const pressed: Record<BenchDeed, () => void> = {
		flow: () =>
			settings().steadyHands
				? hands.run.act({ type: 'flow.give', size: 'drop' })
				: hands.startFlow(),
		swirl: () =>
			settings().steadyHands && hands.isSwirling ? hands.stopSwirl() : hands.startSwirl(),
		touchOff: () => hands.run.act({ type: 'tip.touchOff' }),
		look: () => hands.look(),
		compare: bench.compare,
		stays: bench.stays
	};

	function deedFor(event: KeyboardEvent): BenchDeed | null {
		const { keysOn, keys } = settings();
		if (!keysOn || event.ctrlKey || event.metaKey || event.altKey) return null;
		if (isForFocus(event.target, event.code)) return null;
		const deed = deedOf(event.code, keys);
		return deed && bench.belongs(deed) ? deed : null;
	}

	return {
		down(event) {
			const deed = deedFor(event);
			if (!deed) return;
			event.preventDefault();
			event.stopPropagation();
			if (!event.repeat) pressed[deed]();
		},
		up(event) {
			if (deedFor(event)) event.preventDefault();
			if (settings().steadyHands) return;
			// Wherever the focus has gone meanwhile, a key that is up holds nothing.
			const deed = deedOf(event.code, settings().keys);
			if (deed === 'flow') hands.stopFlow();
			if (deed === 'swirl') hands.stopSwirl();
		}
	};
}
