/// <reference types="@sveltejs/kit" />
import { base, build, files, prerendered, version } from '$service-worker';
import { answerFor } from './answer';

/**
 * Keeps the whole site for times without a network. A new version is fetched in full beside the old
 * one and waits until no page is open, or until a page asks for it, so that nothing changes under a
 * test that goes on.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;
const prefix = 'halfdrop-';
const ownCache = prefix + version;

/** Pictures for readers of the source are no part of the site. */
const kept = [...build, ...files, ...prerendered].filter((path) => !path.includes('/readme/'));
const site = { origin: worker.location.origin, base, paths: new Set(kept) };

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));
worker.addEventListener('message', (event) => {
	if (event.data === 'take') void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
	const answer = answerFor(event.request, site);
	if (answer.from === 'kept') event.respondWith(fromCache(answer.path, event.request));
	else if (answer.from === 'redirect') event.respondWith(Response.redirect(answer.to, 302));
	else if (answer.from === 'network') event.respondWith(fromNetwork(event.request, answer.isPage));
});

/** All or nothing: half a version would fail in the middle of a test. */
async function keepAll(): Promise<void> {
	const cache = await caches.open(ownCache);
	const names = new Set(build);
	await Promise.all(
		kept.map(async (path) => {
			// Names of built files change with their content; others must come fresh.
			const response = await fetch(path, { cache: names.has(path) ? 'default' : 'reload' });
			if (!response.ok) throw new Error(`${path} answered ${response.status}`);
			// A browser refuses for a page what remembers that it was redirected.
			await cache.put(path, response.redirected ? new Response(response.body, response) : response);
		})
	);
}

/**
 * From here on this version answers. Pages of the version before may still be open, where one of
 * them asked for the new: what they may yet load stays.
 */
async function takeOver(): Promise<void> {
	const open = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
	const older = (await caches.keys()).filter(
		(name) => name.startsWith(prefix) && name !== ownCache
	);
	const dispensable = open.length > 0 ? older.slice(0, -1) : older;
	await Promise.all(dispensable.map((name) => caches.delete(name)));
	await worker.clients.claim();
}

async function fromCache(path: string, request: Request): Promise<Response> {
	const cache = await caches.open(ownCache);
	// The browser may have cleared what was kept.
	return (await cache.match(path)) ?? fetch(request);
}

async function fromNetwork(request: Request, isPage: boolean): Promise<Response> {
	// A part of the version before, for a page that is still open.
	const older = isPage ? undefined : await caches.match(request);
	if (older) return older;
	try {
		return await fetch(request);
	} catch (error) {
		if (isPage) return Response.redirect(`${base}/`, 302);
		throw error;
	}
}
