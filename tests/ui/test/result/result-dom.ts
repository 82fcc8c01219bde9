import { render, screen, within } from '@testing-library/svelte';
import type { Unit } from '../../../../src/lib/kits';
import type { Marks } from '../../../../src/lib/observation';
import ResultScreen from '../../../../src/lib/ui/test/result/ResultScreen.svelte';
import type { LastReading } from '../../../../src/lib/ui/test/result/since-last';
import { PlayedTank } from '../../played-tank.svelte';

type About = ConstructorParameters<typeof PlayedTank>[0];

/** Fills as one should, and walks the present titration to its end. */
export function titrate(run: PlayedTank, marks: Marks): PlayedTank {
	const { delivery } = run.kit;
	if (delivery.by !== 'dropper') {
		const sealMl = delivery.by === 'syringe' && delivery.scale === 'down' ? 1 : 0;
		const isBurette = delivery.by === 'burette';
		run.goOnTo('fill').say({ type: 'titrant.drawn', ...(isBurette ? { levelMl: 0 } : { sealMl }) });
	}
	return run.walkThrough(marks);
}

/** A test at its result: the first titration, and a repeat for each further mark of the seal. */
export function testOf(sealsMl: readonly number[], about: About = {}): PlayedTank {
	const run = new PlayedTank(about);
	sealsMl.forEach((sealMl, i) => {
		if (i > 0) run.begin('repeat');
		titrate(run, { sealMl });
	});
	return run;
}

type More = Partial<{
	unit: Unit;
	last: LastReading | null;
	notice: string;
	onsavefile: () => void;
	onclose: () => void;
	logHref: string;
	checkHref: string;
}>;
export function showResult(run: PlayedTank, { unit = 'dKH', last = null, ...more }: More = {}) {
	return render(ResultScreen, { run, unit, last, ...more });
}

export const button = (name: string | RegExp) => screen.getByRole('button', { name });
export const field = (name: string | RegExp) => screen.getByRole('textbox', { name });
/** What the page says, with single spaces. */
export const words = () => (document.body.textContent ?? '').replace(/\s+/g, ' ');
/** The headline: '7.4 ± 0.5 dKH'. */
export const headline = () =>
	(document.querySelector('.value')?.textContent ?? '').replace(/\s+/g, ' ').trim();
/** One titration's item, by its number from 1. */
export function titration(number: number) {
	const region = screen.getByRole('region', { name: /^The titrations?$/ });
	const item = within(region).getAllByRole('listitem')[number - 1];
	if (!item) throw new Error(`no titration ${number} on the page`);
	return within(item);
}
/** The text of a section, by its heading. */
export const section = (name: string) =>
	(screen.getByRole('region', { name }).textContent ?? '').replace(/\s+/g, ' ');
