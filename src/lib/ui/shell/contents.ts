/** A part of the page that the contents lead to. */
export type PagePart = { id: string; title: string };

/** Where a page belongs. */
export type Place = 'home' | 'practise' | 'test' | 'check' | 'kits' | 'log' | 'settings';

/** The pages that the contents name; a room that is not built yet is not among them. */
export const pages = [
	{ place: 'home', path: '/', title: 'Halfdrop' },
	{ place: 'practise', path: '/practise', title: 'Practise' },
	{ place: 'test', path: '/test', title: 'Test' },
	{ place: 'check', path: '/check', title: 'Check' },
	{ place: 'kits', path: '/kits', title: 'Kits' },
	{ place: 'log', path: '/log', title: 'Log' },
	{ place: 'settings', path: '/settings', title: 'Settings' }
] as const satisfies readonly { place: Place; path: string; title: string }[];
