import { cleanup, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { houseBuretteKit } from '../../../../src/lib/kits';
import { keepRefillDraft, refillDraftOf } from '../../../../src/lib/ui/test/marks/refill-draft';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, handle, showMarks, upwardKit } from './marks-dom';

afterEach(() => {
	cleanup();
	keepRefillDraft(null);
});

const before = () => field('Stood at, before refilling');
const after = () => field('Stands at, refilled');
const give = () => userEvent.click(button('Noted, back to the drops'));

describe('a refill notes the mark before and after', () => {
	it('of the seal, and how much was drawn in', async () => {
		const user = userEvent.setup();
		const shown = showMarks(new PlayedTank().goOnTo('titrate'), 'refill');
		expect(before()).toHaveValue('');
		expect(after()).toHaveValue('');
		await user.type(before(), '0,06');
		await user.click(button('Refilled to 1.00'));
		expect(handle('After')).toHaveAttribute('aria-valuetext', '1.00');
		await give();
		expect(shown.said()).toEqual([
			{ type: 'titrant.drawn', sealMl: 1, before: { sealMl: 0.06 }, drawnAgainMl: 0.94 }
		]);
		expect(shown.over).toHaveBeenCalledOnce();
	});

	it('of the liquid line both times, where the start was noted by it alone', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('fill');
		run.say({ type: 'titrant.drawn', lineMl: 0.9 });
		const shown = showMarks(run.goOnTo('titrate'), 'refill');
		expect(screen.getByRole('radio', { name: 'the liquid line' })).toBeChecked();
		await user.type(before(), '0.10');
		await user.type(after(), '0.95');
		await give();
		expect(shown.said()).toEqual([
			{ type: 'titrant.drawn', lineMl: 0.95, before: { lineMl: 0.1 }, drawnAgainMl: 0.85 }
		]);
	});

	it.each([
		[upwardKit, '0.94', '0.00', { sealMl: 0, before: { sealMl: 0.94 }, drawnAgainMl: 0.94 }],
		[houseBuretteKit, '9.8', '0', { levelMl: 0, before: { levelMl: 9.8 }, drawnAgainMl: 9.8 }]
	])('on scales that grow as they empty', async (kit, stood, stands, marks) => {
		const user = userEvent.setup();
		const shown = showMarks(new PlayedTank({ kit }).goOnTo('titrate'), 'refill');
		await user.type(before(), stood);
		await user.type(after(), stands);
		await give();
		expect(shown.said()).toEqual([{ type: 'titrant.drawn', ...marks }]);
	});
});

describe('a refill is held while it cannot be', () => {
	it('without one of the two: asked for where it is missing', async () => {
		const shown = showMarks(new PlayedTank().goOnTo('titrate'), 'refill');
		await userEvent.type(after(), '1.00');
		await give();
		expect(before()).toHaveAccessibleDescription(/needs this number too/);
		expect(before()).toBeInvalid();
		expect(after()).toBeValid();
		expect(shown.said()).toEqual([]);
	});

	it('the wrong way round: said, and both stay written', async () => {
		const user = userEvent.setup();
		const shown = showMarks(new PlayedTank().goOnTo('titrate'), 'refill');
		await user.type(before(), '1,00');
		await user.type(after(), '0,06');
		await give();
		expect(screen.getByText(/Are the two the wrong way round\?/)).toBeInTheDocument();
		expect(before()).toHaveValue('1,00');
		expect(after()).toHaveValue('0,06');
		expect(shown.said()).toEqual([]);
	});
});

describe('a refill outlives the page', () => {
	it('with every letter that was typed, and the mark it is read by; noted, it is forgotten', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('titrate');
		showMarks(run, 'refill');
		await user.click(screen.getByRole('radio', { name: 'the liquid line' }));
		await user.type(before(), '0');
		cleanup();
		const again = showMarks(run, 'refill');
		expect(before()).toHaveValue('0');
		expect(screen.getByRole('radio', { name: 'the liquid line' })).toBeChecked();
		await user.type(after(), '0.95');
		await give();
		expect(again.said()).toEqual([
			{ type: 'titrant.drawn', lineMl: 0.95, before: { lineMl: 0 }, drawnAgainMl: 0.95 }
		]);
		expect(refillDraftOf(run.log.id, 0)).toBeNull();
	});

	it('but not into another titration', async () => {
		const run = new PlayedTank().goOnTo('titrate');
		showMarks(run, 'refill');
		await userEvent.type(before(), '0.06');
		expect(refillDraftOf(run.log.id, 0)).toMatchObject({ before: '0.06', after: '' });
		expect(refillDraftOf(run.log.id, 1)).toBeNull();
		expect(refillDraftOf('another test', 0)).toBeNull();
	});
});
