/**
 * Where a leaflet is typed in, as it stands in the address after '#': a kit of one's own, a new one
 * that begins as a copy, or, with nothing there, a new one.
 */
export type EditPlace = { is: 'kit' | 'from'; id: string } | { is: 'new' };

export function placeOfHash(hash: string): EditPlace {
	const asked = new URLSearchParams(hash.replace(/^#/, ''));
	const kit = asked.get('kit');
	if (kit) return { is: 'kit', id: kit };
	const from = asked.get('from');
	return from ? { is: 'from', id: from } : { is: 'new' };
}

/** The other way round of `placeOfHash`; empty for a new kit. Also the name of its draft. */
export function hashOfPlace(place: EditPlace): string {
	return place.is === 'new' ? '' : `#${new URLSearchParams({ [place.is]: place.id }).toString()}`;
}
