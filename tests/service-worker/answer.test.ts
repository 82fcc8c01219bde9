import { describe, expect, test } from 'vitest';
import { answerFor, type Site } from '../../src/service-worker/answer';

const siteIn = (base: string): Site => ({
	origin: 'https://here.example',
	base,
	paths: new Set(
		['/', '/practise/', '/practise/__data.json', '/_app/immutable/a.js', '/icon.svg'].map(
			(path) => base + path
		)
	)
});
const ask = (path: string, mode: 'navigate' | 'cors', base: string, method = 'GET') =>
	answerFor({ method, mode, url: new URL(path, 'https://here.example').href }, siteIn(base));

describe.each([[''], ['/some/folder']])('a site in the folder "%s"', (base) => {
	test.each([
		['/', '/'],
		['/practise/', '/practise/'],
		['/practise/?from=home', '/practise/'],
		['/practise/#run=x', '/practise/']
	])('page %s is kept, whatever follows its path', (path, kept) => {
		expect(ask(base + path, 'navigate', base)).toEqual({ from: 'kept', path: base + kept });
	});
	test.each([
		['/practise', '/practise/'],
		['/practise?a=1', '/practise/?a=1'],
		['/practise/index.html', '/practise/'],
		['/index.html', '/']
	])('page %s goes to its own spelling', (path, to) => {
		expect(ask(base + path, 'navigate', base)).toEqual({ from: 'redirect', to: base + to });
	});
	test('parts and data are kept, data whatever is asked of it', () => {
		for (const path of ['/_app/immutable/a.js', '/icon.svg', '/practise/__data.json'])
			expect(ask(base + path, 'cors', base)).toEqual({ from: 'kept', path: base + path });
		expect(ask(`${base}/practise/__data.json?x-sveltekit-invalidated=01`, 'cors', base)).toEqual({
			from: 'kept',
			path: `${base}/practise/__data.json`
		});
	});
	test('what is not kept comes from the network', () => {
		expect(ask(`${base}/nowhere`, 'navigate', base)).toEqual({ from: 'network', isPage: true });
		expect(ask(`${base}/_app/immutable/old.js`, 'cors', base)).toEqual({
			from: 'network',
			isPage: false
		});
		// Without its stroke a folder is a page, never a part.
		expect(ask(`${base}/practise`, 'cors', base)).toEqual({ from: 'network', isPage: false });
	});
	test('other hosts and other deeds are left to the browser', () => {
		expect(ask('https://there.example/practise/', 'navigate', base)).toEqual({ from: 'browser' });
		expect(ask(`${base}/practise/`, 'cors', base, 'POST')).toEqual({ from: 'browser' });
	});
});

test('what lies beside the folder of the site is not the site', () => {
	expect(ask('/other/', 'navigate', '/some/folder')).toEqual({ from: 'browser' });
});
