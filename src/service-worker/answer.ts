/** What is known of the site: its own paths, as they are kept for times without a network. */
export type Site = {
	/** 'https://example.org' */
	origin: string;
	/** Path of the folder in which the site lies, without a stroke at its end. */
	base: string;
	/** Everything that is kept; a page ends in a stroke. */
	paths: ReadonlySet<string>;
};

/** Where a request finds its answer. */
export type Answer =
	| { from: 'kept'; path: string }
	/** A page is asked for under another spelling of its address. */
	| { from: 'redirect'; to: string }
	| { from: 'network'; isPage: boolean }
	/** Not ours: the browser does what it would do without us. */
	| { from: 'browser' };

/**
 * Where the answer to a request lies. What is kept comes from there, also while the network is on:
 * pages and their scripts are then always of one version.
 */
export function answerFor(
	request: { method: string; mode: string; url: string },
	{ origin, base, paths }: Site
): Answer {
	const url = new URL(request.url);
	const isOurs = url.origin === origin && url.pathname.startsWith(`${base}/`);
	if (request.method !== 'GET' || !isOurs) return { from: 'browser' };
	const { pathname, search } = url;
	const isPage = request.mode === 'navigate';
	if (!isPage) {
		// Data of a page bears a query that says which parts are asked for; all of it is kept.
		return paths.has(pathname)
			? { from: 'kept', path: pathname }
			: { from: 'network', isPage: false };
	}
	const page = pathname.replace(/\/index\.html$/, '/').replace(/\/?$/, '/');
	if (paths.has(page))
		return page === pathname
			? { from: 'kept', path: page }
			: // Addresses in a page are counted from its own, so its spelling matters.
				{ from: 'redirect', to: page + search };
	return paths.has(pathname) ? { from: 'kept', path: pathname } : { from: 'network', isPage: true };
}
