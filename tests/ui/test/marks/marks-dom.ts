import { render, screen } from '@testing-library/svelte';
import { vi } from 'vitest';
import { houseSyringeKit, type Kit, type SyringeDelivery } from '../../../../src/lib/kits';
import type { WalkEvent } from '../../../../src/lib/observation';
import MarksStep from '../../../../src/lib/ui/test/marks/MarksStep.svelte';
import type { PlayedTank } from '../../played-tank.svelte';

/** The screen of the marks on a run; `over` is called when it is done with. */
export function showMarks(run: PlayedTank, kind: 'fill' | 'read' | 'refill') {
	const over = vi.fn();
	const from = run.titration.events.length;
	render(MarksStep, { run, kind, onover: over });
	/** What was said of the titration since the screen came up, without ids and times. */
	const said = (): WalkEvent[] => run.titration.events.slice(from).map(({ event }) => event);
	return { over, said };
}

export const field = (name: string | RegExp) => screen.getByRole('textbox', { name });
export const handle = (name: 'Seal' | 'Line' | 'Level' | 'Before' | 'After') =>
	screen.getByRole('slider', { name: `${name}, on the barrel` });
export const button = (name: string | RegExp) => screen.getByRole('button', { name });
export const noButton = (name: string | RegExp) => screen.queryByRole('button', { name });

const syringe = houseSyringeKit.delivery as SyringeDelivery;
/** The same syringe printed the other way: 0 where the plunger ends, numerals growing to the tip. */
export const upwardKit: Kit = { ...houseSyringeKit, delivery: { ...syringe, scale: 'up' } };
