import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const bare = /^\s*import\s+['"](?<what>[^'"]+)['"]/gm;

/** What a source loads for its effect alone. */
const loadedForEffect = (source: string) =>
	[...source.matchAll(bare)].map(({ groups }) => groups?.['what'] ?? '');

test('an import for its effect alone is found', () => {
	expect(loadedForEffect("import './setup';\nimport { a } from './a';\nimport 'b.css';")).toEqual([
		'./setup',
		'b.css'
	]);
});

test('nothing but a style sheet is loaded for its effect: the builder leaves other such modules out', () => {
	const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
		/\.(ts|svelte)$/.test(name)
	);
	expect(files.length).toBeGreaterThan(500);
	const effects = files.flatMap((file) =>
		loadedForEffect(readFileSync(`src/${file}`, 'utf8')).map((what) => `${file}: ${what}`)
	);
	expect(effects.filter((each) => !each.endsWith('.css'))).toEqual([]);
});
