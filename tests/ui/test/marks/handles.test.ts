import { cleanup, fireEvent, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit } from '../../../../src/lib/kits';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, handle, showMarks, upwardKit } from './marks-dom';

afterEach(cleanup);

const kits = [
	['a syringe whose numerals fall', houseSyringeKit, 'Seal'],
	['a syringe whose numerals grow', upwardKit, 'Seal'],
	['a burette', houseBuretteKit, 'Level']
] as const;

describe('nothing stands there before a person has put it', () => {
	it.each(kits)('neither at filling nor at reading: %s', (_, kit, name) => {
		for (const kind of ['fill', 'read'] as const) {
			const run = new PlayedTank({ kit, expected: 7.4 }).goOnTo('fill');
			if (kind === 'read') run.goOnTo('read');
			showMarks(run, kind);
			for (const each of screen.getAllByRole('textbox')) expect(each).toHaveValue('');
			for (const each of screen.getAllByRole('slider'))
				expect(each).toHaveAttribute('aria-valuetext', 'not placed yet');
			expect(button(`${name}: 0.01 more`)).toBeDisabled();
			cleanup();
		}
	});

	it('nor do the drops of a dropper, unless this person counted them on this walk', () => {
		showMarks(new PlayedTank({ kit: houseDropperKit }).goOnTo('read'), 'read');
		expect(field('Drops it took')).toHaveValue('');
		cleanup();
		const counted = new PlayedTank({ kit: houseDropperKit }).goOnTo('titrate');
		counted.say({ type: 'titrant.fell', drops: 9 });
		counted.say({ type: 'titrant.fell', drops: 4 });
		showMarks(counted.goOnTo('read'), 'read');
		expect(field('Drops it took')).toHaveValue('13');
	});
});

describe('field and handle are one', () => {
	it.each(['0.42', '0,42', ' 0,42 '])('%j in the field moves the handle', async (text) => {
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		await userEvent.type(field('Seal stands at'), text);
		expect(handle('Seal')).toHaveAttribute('aria-valuenow', '0.42');
		expect(handle('Seal')).toHaveAttribute('aria-valuetext', '0.42');
	});

	it('keys move the handle by 0.01, 0.05 and 0.10, and write into the field', async () => {
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		await userEvent.type(field('Seal stands at'), '0,40');
		const seal = handle('Seal');
		const press = (key: string, shiftKey = false) => fireEvent.keyDown(seal, { key, shiftKey });
		await press('ArrowUp');
		// Whoever writes a comma gets one back.
		expect(field('Seal stands at')).toHaveValue('0,41');
		await press('ArrowUp', true);
		expect(field('Seal stands at')).toHaveValue('0,46');
		await press('PageUp');
		expect(field('Seal stands at')).toHaveValue('0,56');
		await press('PageDown');
		await press('ArrowDown', true);
		await press('ArrowDown');
		expect(field('Seal stands at')).toHaveValue('0,40');
	});

	it.each([
		[houseSyringeKit, 'Seal', '0.51'],
		[upwardKit, 'Seal', '0.49'],
		[houseBuretteKit, 'Level', '0.49']
	] as const)('up is up on the drawing, whichever way the numerals run', async (kit, name, to) => {
		showMarks(new PlayedTank({ kit }).goOnTo('read'), 'read');
		await userEvent.type(field(`${name} stands at`), '0.50');
		await fireEvent.keyDown(handle(name), { key: 'ArrowUp' });
		expect(field(`${name} stands at`)).toHaveValue(to);
	});

	it('a handle never placed is picked up at the end that the key comes from', async () => {
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		await fireEvent.keyDown(handle('Line'), { key: 'ArrowUp' });
		expect(field(/^Liquid line/)).toHaveValue('0.00');
		expect(field('Seal stands at')).toHaveValue('');
	});

	it('the buttons beside a field move it too, and stop at the ends of the scale', async () => {
		const user = userEvent.setup();
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		await user.type(field('Seal stands at'), '0.01');
		await user.click(button('Seal: 0.01 less'));
		await user.click(button('Seal: 0.01 less'));
		expect(field('Seal stands at')).toHaveValue('0.00');
		await user.click(button('Seal: 0.01 more'));
		expect(handle('Seal')).toHaveAttribute('aria-valuetext', '0.01');
	});

	it('a tap on the bare barrel places the mark once; later taps there move nothing', async () => {
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		const barrel = screen.getByRole('group', { name: 'The barrel' });
		await fireEvent.pointerDown(barrel, { button: 0, clientY: 150 });
		await fireEvent.pointerUp(barrel);
		const placed = (field('Seal stands at') as HTMLInputElement).value;
		// Half-way up the drawing is somewhere inside the scale.
		expect(Number(placed)).toBeGreaterThan(0.2);
		expect(Number(placed)).toBeLessThan(1.1);
		await fireEvent.pointerDown(barrel, { button: 0, clientY: 250 });
		await fireEvent.pointerUp(barrel);
		expect(field('Seal stands at')).toHaveValue(placed);
	});

	it('a drag takes the handle as far as the hand goes', async () => {
		showMarks(new PlayedTank().goOnTo('read'), 'read');
		await userEvent.type(field('Seal stands at'), '0.50');
		const seal = handle('Seal');
		await fireEvent.pointerDown(seal, { button: 0, clientY: 100 });
		await fireEvent.pointerMove(seal, { clientY: 80 });
		await fireEvent.pointerMove(seal, { clientY: 60 });
		await fireEvent.pointerUp(seal);
		const once = Number((field('Seal stands at') as HTMLInputElement).value);
		expect(once).toBeGreaterThan(0.5);
		await fireEvent.pointerDown(seal, { button: 0, clientY: 60 });
		await fireEvent.pointerMove(seal, { clientY: 100 });
		await fireEvent.pointerUp(seal);
		expect(field('Seal stands at')).toHaveValue('0.50');
	});
});

describe('what is off the scale', () => {
	it.each([
		['1,5', /a mark stands between 0 and 1\.25; found 1,5/],
		['−0.1', /a mark stands between 0 and 1\.25; found −0\.1/],
		['o.4', /“o\.4” is no number/],
		['0.4.2', /more than a decimal sign/]
	])('%j is answered beside its field and stays written', async (text, message) => {
		const user = userEvent.setup();
		const { said, over } = showMarks(new PlayedTank().goOnTo('read'), 'read');
		await user.type(field('Seal stands at'), text);
		await user.click(button('That is my reading'));
		expect(field('Seal stands at')).toHaveValue(text);
		expect(field('Seal stands at')).toBeInvalid();
		expect(field('Seal stands at')).toHaveAccessibleDescription(message);
		expect(handle('Seal')).toHaveAttribute('aria-valuetext', 'not placed yet');
		expect(said()).toEqual([]);
		expect(over).not.toHaveBeenCalled();
	});

	it('an empty reading is asked for, at the field', async () => {
		const { said } = showMarks(new PlayedTank().goOnTo('read'), 'read');
		await userEvent.click(button('That is my reading'));
		expect(field('Seal stands at')).toHaveAccessibleDescription(/numeral you read/);
		expect(said()).toEqual([]);
	});

	it('half a drop is no count', async () => {
		const user = userEvent.setup();
		const { said } = showMarks(new PlayedTank({ kit: houseDropperKit }).goOnTo('read'), 'read');
		await user.type(field('Drops it took'), '13,5');
		await user.click(button('That is my reading'));
		expect(field('Drops it took')).toHaveAccessibleDescription('Count whole drops; found 13,5.');
		expect(field('Drops it took')).toHaveValue('13,5');
		expect(said()).toEqual([]);
	});
});
