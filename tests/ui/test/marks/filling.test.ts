import { cleanup, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { houseBuretteKit, houseSyringeKit } from '../../../../src/lib/kits';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, noButton, showMarks, upwardKit } from './marks-dom';

afterEach(cleanup);

const done = [{ type: 'filling.done' }, { type: 'step.done', stepId: 'fill' }] as const;
const radio = (name: string) => screen.getByRole('radio', { name });

describe('the usual filling is one press', () => {
	it.each([
		[houseSyringeKit, 'Seal at 1.00, tip on', { sealMl: 1 }],
		[upwardKit, 'Seal at 0.00, tip on', { sealMl: 0 }],
		[houseBuretteKit, 'Level at 0.00, no air in the jet', { levelMl: 0 }]
	])('says where it stands by what the button says', async (kit, words, marks) => {
		const { said, over } = showMarks(new PlayedTank({ kit }).goOnTo('fill'), 'fill');
		await userEvent.click(button(words));
		expect(said()).toEqual([{ type: 'titrant.drawn', ...marks }, ...done]);
		expect(over).toHaveBeenCalledOnce();
	});

	it('and when the tip went on is noted in its order', async () => {
		const user = userEvent.setup();
		const before = showMarks(new PlayedTank().goOnTo('fill'), 'fill');
		await user.click(radio('Yes'));
		await user.click(button('Seal at 1.00, tip on'));
		expect(before.said()).toEqual([
			{ type: 'tip.fitted', liquidInside: false },
			{ type: 'titrant.drawn', sealMl: 1, tip: 'fitted' },
			...done
		]);
		cleanup();
		const after = showMarks(new PlayedTank().goOnTo('fill'), 'fill');
		await user.click(radio('No, after'));
		await user.click(button('Seal at 1.00'));
		expect(after.said().slice(0, 2)).toEqual([
			{ type: 'titrant.drawn', sealMl: 1, tip: 'off' },
			{ type: 'tip.fitted', liquidInside: true }
		]);
		// A tip put on late costs its own volume: that is said before anything goes on, and what it
		// costs: 0.17 mL at 16 dKH for each.
		expect(after.over).not.toHaveBeenCalled();
		expect(screen.getByText(/Fill again through it\. Worth about 2\.7\sdKH\./)).toBeVisible();
		await user.click(button('Fill again'));
		expect(field('Seal stands at')).toHaveValue('');
	});
});

describe('filled by the liquid line', () => {
	async function trapped() {
		const user = userEvent.setup();
		const shown = showMarks(new PlayedTank().goOnTo('fill'), 'fill');
		await user.type(field('Seal stands at'), '1,17');
		await user.type(field(/^Liquid line/), '1,00');
		await user.click(button('That is where it stands'));
		return { user, ...shown };
	}

	it('shows the air between, the cost and the two ways out', async () => {
		const { said, over } = await trapped();
		expect(said()).toEqual([{ type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 }]);
		expect(over).not.toHaveBeenCalled();
		const trap = screen.getByRole('region', { name: /line stands at full, the seal does not/ });
		// 0.17 mL at 16 dKH for each mL of this leaflet is 2.72.
		expect(trap).toHaveTextContent('2.7 dKH too low');
		expect(trap.querySelector('svg')).toBeInTheDocument();
		expect(button('Refill until the seal stands at 1.00')).toBeInTheDocument();
		expect(button(/read the line at the end as well/)).toBeInTheDocument();
	});

	it('way one: filled anew, it asks again with empty fields, and the new filling counts', async () => {
		const { user, said, over } = await trapped();
		await user.click(button('Refill until the seal stands at 1.00'));
		expect(field('Seal stands at')).toHaveValue('');
		expect(field(/^Liquid line/)).toHaveValue('');
		await user.click(button('Seal at 1.00, tip on'));
		expect(said().slice(1)).toEqual([{ type: 'titrant.drawn', sealMl: 1 }, ...done]);
		expect(over).toHaveBeenCalledOnce();
	});

	it('way two: left as it is, with both marks kept', async () => {
		const { user, said, over } = await trapped();
		await user.click(button(/read the line at the end as well/));
		expect(said()).toEqual([{ type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 }, ...done]);
		expect(over).toHaveBeenCalledOnce();
	});

	it('is found again by a page that comes back', async () => {
		const run = new PlayedTank().goOnTo('fill');
		run.say({ type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 });
		showMarks(run, 'fill');
		expect(screen.getByText(/seal at 1\.17, liquid line at 1\.00/)).toBeInTheDocument();
		expect(button('Refill until the seal stands at 1.00')).toBeInTheDocument();
	});
});

describe('other fillings', () => {
	it('too little for the last value is said while it can be filled up', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank({ expected: 9 }).goOnTo('fill');
		const { over } = showMarks(run, 'fill');
		// 9 dKH takes 0.58 mL; 0.50 is there.
		await user.type(field('Seal stands at'), '0.50');
		await user.click(button('That is where it stands'));
		expect(screen.getByText(/may not be enough\. Fill it up/)).toBeVisible();
		expect(over).not.toHaveBeenCalled();
		await user.click(button('Go on with it as it is'));
		expect(over).toHaveBeenCalledOnce();
	});

	it('beside the full mark is no slip: counted from there', async () => {
		const user = userEvent.setup();
		const { said, over } = showMarks(new PlayedTank().goOnTo('fill'), 'fill');
		await user.type(field('Seal stands at'), '0.90');
		await user.click(button('That is where it stands'));
		expect(said()).toEqual([{ type: 'titrant.drawn', sealMl: 0.9 }, ...done]);
		expect(over).toHaveBeenCalledOnce();
	});

	it('at the end where it would be empty, it is asked which end is 0', async () => {
		const user = userEvent.setup();
		const { over } = showMarks(new PlayedTank().goOnTo('fill'), 'fill');
		await user.type(field('Seal stands at'), '0.00');
		await user.click(button('That is where it stands'));
		expect(screen.getByText(/Which end is 0\?/)).toBeInTheDocument();
		expect(over).not.toHaveBeenCalled();
		await user.click(button('It stands otherwise now'));
		expect(field('Seal stands at')).toHaveValue('');
	});

	it('off the scale holds the filling', async () => {
		const user = userEvent.setup();
		const { said } = showMarks(new PlayedTank({ kit: houseBuretteKit }).goOnTo('fill'), 'fill');
		await user.type(field('Level stands at'), '11');
		await user.click(button('That is where it stands'));
		expect(field('Level stands at')).toHaveAccessibleDescription(
			'The scale runs from 0 to 10; found 11.'
		);
		expect(field('Level stands at')).toHaveValue('11');
		expect(said()).toEqual([]);
		expect(noButton('Go on')).toBeNull();
	});
});
