import { cleanup, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit } from '../../../../src/lib/kits';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, handle, noButton, showMarks, upwardKit } from './marks-dom';

afterEach(cleanup);

const over = { type: 'step.done', stepId: 'read' } as const;
/** A walk at its reading, filled to the full mark as it should be. */
function atReading(about: ConstructorParameters<typeof PlayedTank>[0] = {}): PlayedTank {
	const run = new PlayedTank(about).goOnTo('fill');
	const { delivery } = run.kit;
	if (delivery.by === 'syringe')
		run.say({ type: 'titrant.drawn', sealMl: delivery.scale === 'down' ? 1 : 0 });
	return run.goOnTo('read');
}

describe('a reading ends with its marks, and the step over', () => {
	it.each([
		[houseSyringeKit, 'Seal stands at', '0,52', { sealMl: 0.52 }],
		[upwardKit, 'Seal stands at', '0.48', { sealMl: 0.48 }],
		[houseBuretteKit, 'Level stands at', '3,37', { levelMl: 3.37 }],
		[houseDropperKit, 'Drops it took', '14', { drops: 14 }]
	])('%#: by each sort of kit', async (kit, name, text, marks) => {
		const user = userEvent.setup();
		const run = new PlayedTank({ kit });
		if (kit.delivery.by !== 'dropper') run.goOnTo('fill');
		const shown = showMarks(run.goOnTo('read'), 'read');
		await user.type(field(name), text);
		await user.click(button('That is my reading'));
		expect(shown.said()).toEqual([{ type: 'marks.read', marks }, over]);
		expect(shown.over).toHaveBeenCalledOnce();
	});

	it('says which end is 0 by this leaflet', () => {
		showMarks(atReading(), 'read');
		expect(screen.getByText(/0 is at the tip/)).toBeInTheDocument();
		cleanup();
		showMarks(atReading({ kit: upwardKit }), 'read');
		expect(screen.getByText(/0 is at the top/)).toBeInTheDocument();
	});
});

describe('drops against the mark', () => {
	it('are told in a sentence while both are given; agreement needs no more', async () => {
		const user = userEvent.setup();
		const shown = showMarks(atReading(), 'read');
		await user.type(field('Seal stands at'), '0.52');
		expect(screen.queryByText(/drops make about/)).toBeNull();
		await user.type(field('Drops, if you counted'), '23');
		// 23 drops of 0.021 mL, and from 1.00 down to 0.52.
		expect(
			screen.getByText('23 drops make about 0.48 mL; by your mark 0.48 mL went in. They agree.')
		).toBeInTheDocument();
		await user.click(button('That is my reading'));
		expect(shown.said()).toEqual([
			{ type: 'marks.read', marks: { sealMl: 0.52, drops: 23 } },
			over
		]);
	});

	it('that fit the other end of the scale offer it; both readings are kept', async () => {
		const user = userEvent.setup();
		const shown = showMarks(atReading(), 'read');
		// 31 drops make 0.65 mL. At 0.62 on this scale only 0.38 went in; read from the other end 0.62.
		await user.type(field('Seal stands at'), '0.62');
		await user.type(field('Drops, if you counted'), '31');
		expect(screen.getByText(/They do not agree/)).toBeInTheDocument();
		await user.click(button('I read it from the other end: seal at 0.38'));
		expect(field('Seal stands at')).toHaveValue('0.38');
		expect(handle('Seal')).toHaveAttribute('aria-valuetext', '0.38');
		expect(screen.getByText(/31 drops make about 0\.65 mL.*They agree/)).toBeInTheDocument();
		await user.click(button('That is my reading'));
		expect(shown.said()).toEqual([
			{ type: 'marks.read', marks: { sealMl: 0.62, drops: 31 } },
			{ type: 'marks.read', marks: { sealMl: 0.38, drops: 31 } },
			over
		]);
	});

	it('the other end of a scale that grows is told as well', async () => {
		const user = userEvent.setup();
		showMarks(atReading({ kit: upwardKit }), 'read');
		await user.type(field('Seal stands at'), '0.38');
		await user.type(field('Drops, if you counted'), '31');
		expect(button('I read it from the other end: seal at 0.62')).toBeInTheDocument();
	});

	it('that fit neither end are held, with likely causes, and may be taken so', async () => {
		const user = userEvent.setup();
		const shown = showMarks(atReading(), 'read');
		await user.type(field('Seal stands at'), '0.38');
		await user.type(field('Drops, if you counted'), '12');
		expect(noButton(/from the other end/)).toBeNull();
		await user.click(button('That is my reading'));
		expect(shown.over).not.toHaveBeenCalled();
		// 12 drops of 0.021 mL; 0.62 mL by the mark.
		expect(screen.getByText(/12 drops make about 0\.25 mL; your mark says 0\.62\./)).toBeVisible();
		await user.click(button('Take it so'));
		expect(shown.said()).toEqual([
			{ type: 'marks.read', marks: { sealMl: 0.38, drops: 12 } },
			over
		]);
	});

	it('what the sentence calls agreement is not called doubtful a press later', async () => {
		const user = userEvent.setup();
		// From clear agreement far into disagreement: both look at the same numbers in the same way.
		let agreed = 0;
		for (const drops of [18, 20, 26, 28, 30, 34]) {
			const shown = showMarks(atReading(), 'read');
			await user.type(field('Seal stands at'), '0.52');
			await user.type(field('Drops, if you counted'), String(drops));
			const agrees = screen.queryByText(/They agree/) !== null;
			await user.click(button('That is my reading'));
			expect(shown.said().length === 2, `${drops} drops`).toBe(agrees);
			agreed += agrees ? 1 : 0;
			cleanup();
		}
		expect(agreed).toBeGreaterThan(0);
		expect(agreed).toBeLessThan(6);
	});
});

describe('a value far from the last', () => {
	it('that the other end of the scale would explain is asked about', async () => {
		const user = userEvent.setup();
		showMarks(atReading({ expected: 9.6 }), 'read');
		await user.type(field('Seal stands at'), '0.62');
		// 0.38 mL and 0.62 mL at 16 dKH each, less 0.3.
		expect(
			screen.getByText(/This makes 5\.8 dKH; last time it was 9\.6\. .* it would be 9\.6\./)
		).toBeInTheDocument();
	});

	it('is not told to a second person, nor anything else that the first found', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank({ expected: 9.6 });
		run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: 1 });
		run.goOnTo('titrate').say({ type: 'titrant.fell', drops: 29 });
		run.walkThrough({ sealMl: 0.4, drops: 29 }).begin('otherPerson', 'Ana');
		run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: 1 });
		showMarks(run.goOnTo('read'), 'read');
		for (const each of screen.getAllByRole('textbox')) expect(each).toHaveValue('');
		await user.type(field('Seal stands at'), '0.62');
		expect(document.body).not.toHaveTextContent(/9\.6|9\.3|at 0\.40|29|last time/);
	});
});

describe('read again', () => {
	it('keeps what stands in the field, and both readings in the log', async () => {
		const user = userEvent.setup();
		const shown = showMarks(atReading(), 'read');
		await user.type(field('Seal stands at'), '0.38');
		await user.type(field('Drops, if you counted'), '12');
		await user.click(button('That is my reading'));
		await user.click(button('Read it again'));
		await user.clear(field('Drops, if you counted'));
		await user.click(button('That is my reading'));
		expect(shown.said()).toEqual([
			{ type: 'marks.read', marks: { sealMl: 0.38, drops: 12 } },
			{ type: 'marks.read', marks: { sealMl: 0.38 } },
			over
		]);
	});
});
