import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { createRawSnippet } from 'svelte';
import { describe, expect, test } from 'vitest';
import Frame from '../../../src/lib/ui/shell/Frame.svelte';

const html = (text: string) => createRawSnippet(() => ({ render: () => `<p>${text}</p>` }));

describe('Frame', () => {
	test('has one heading of the first rank, a way to skip to the page, and the page', () => {
		render(Frame, { title: 'Practise', children: html('Text') });
		expect(screen.getAllByRole('heading', { level: 1 }).map((h) => h.textContent)).toEqual([
			'Practise'
		]);
		expect(screen.getByRole('link', { name: 'Skip to the page' })).toHaveAttribute('href', '#page');
		expect(within(screen.getByRole('main')).getByText('Text')).toBeInTheDocument();
	});

	test('the contents name where one is, and the parts of the page', () => {
		render(Frame, {
			title: 'Practise',
			place: 'practise',
			parts: [{ id: 'drills', title: 'Drills' }],
			children: html('Text')
		});
		const [contents] = screen.getAllByRole('navigation', { name: 'Contents' });
		if (!contents) throw new Error('no contents');
		expect(within(contents).getByRole('link', { name: 'Practise' })).toHaveAttribute(
			'aria-current',
			'page'
		);
		expect(within(contents).getByRole('link', { name: 'Drills' })).toHaveAttribute(
			'href',
			'#drills'
		);
	});

	test('Escape folds the contents away', async () => {
		const { container } = render(Frame, { title: 'Practise', children: html('Text') });
		const details = container.querySelector('details');
		if (!details) throw new Error('no contents to fold');
		details.open = true;
		await userEvent.keyboard('{Escape}');
		expect(details.open).toBe(false);
	});
});
