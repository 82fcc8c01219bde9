/** A part of the page that the contents lead to. */
export type PagePart = { id: string; title: string };

/** The pages that the contents name; rooms that are not built yet are not among them. */
export const pages = [
	{ place: 'home', path: '/', title: 'Halfdrop' },
	{ place: 'practise', path: '/practise', title: 'Practise' }
] as const;
export type Place = (typeof pages)[number]['place'];
