import ts from 'typescript-eslint';
import { Linter } from 'eslint';
import { describe, expect, test } from 'vitest';
import { purityRules, roomRules } from '../../eslint.config.js';

/** Messages of the room rules for a line of code that would stand in `file`. */
function complaints(file: string, code: string): string[] {
	const linter = new Linter();
	const config = [
		{ files: ['**/*.ts'], languageOptions: { parser: ts.parser } },
		...roomRules,
		purityRules
	] as Linter.Config[];
	return linter.verify(code, config, { filename: file }).map((message) => message.message);
}

describe('imports between rooms go one way', () => {
	test.each([
		['src/lib/kits/planted.ts', "import '../bench';"],
		['src/lib/kits/planted.ts', "import { x } from '$lib/observation';"],
		['src/lib/bench/planted.ts', "import { x } from '../judgement';"],
		['src/lib/bench/planted.ts', "import { x } from '../metrology';"],
		['src/lib/procedure/planted.ts', "import { x } from '$lib/records';"],
		['src/lib/records/planted.ts', "import { x } from '../procedure/index';"],
		['src/lib/chemistry/planted.ts', "import { x } from '../../lib/kits';"],
		[
			'src/lib/procedure/planted.ts',
			"import { x } from '../../routes/practise/practice-run.svelte';"
		],
		['src/lib/procedure/planted.ts', "import { x } from '../bench/ledger';"],
		['src/lib/bench/planted.ts', "import { onMount } from 'svelte';"],
		['src/lib/judgement/planted.ts', "import Dexie from 'dexie';"]
	])('%s may not hold %s', (file, code) => {
		expect(complaints(file, code)).toHaveLength(1);
	});

	test.each([
		['src/lib/kits/planted.ts', "import '../chemistry';"],
		['src/lib/bench/planted.ts', "import '$lib/glassware';"],
		['src/lib/procedure/planted.ts', "import '../bench/index';"],
		['src/lib/bench/planted.ts', "import './noise';"],
		['src/lib/ui/planted.ts', "import '$lib/procedure'; import 'svelte';"],
		['src/lib/records/planted.ts', "import Dexie from 'dexie'; export default Dexie;"]
	])('%s may hold %s', (file, code) => {
		expect(complaints(file, code)).toEqual([]);
	});
});

describe('the pure rooms know no clock, chance or browser', () => {
	test.each([
		'export const t = Date.now();',
		'export const t = new Date();',
		'export const r = Math.random();',
		'export const w = window.innerWidth;',
		"localStorage.setItem('a', 'b');",
		'setTimeout(() => 1, 10);'
	])('%s', (code) => {
		expect(complaints('src/lib/bench/planted.ts', code)).toHaveLength(1);
		expect(complaints('src/lib/procedure/planted.ts', code)).toHaveLength(1);
	});

	test('a date that is handed in may be turned into words', () => {
		expect(complaints('src/lib/procedure/planted.ts', 'export const t = new Date(0);')).toEqual([]);
	});
});
