import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
	preprocess: vitePreprocess(),
	kit: {
		adapter: adapter({ fallback: undefined, strict: true }),
		paths: { relative: true },
		csp: {
			mode: 'hash',
			directives: {
				'default-src': ['self'],
				'connect-src': ['self'],
				'img-src': ['self', 'data:'],
				// Svelte writes style attributes for custom properties; nothing else is inline.
				'style-src': ['self', 'unsafe-inline'],
				'script-src': ['self'],
				'object-src': ['none'],
				'base-uri': ['self']
			}
		}
	}
};
