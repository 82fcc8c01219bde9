import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/**
 * The rooms of src/lib, from the top of the house to the foundations. A room may import the rooms
 * of lower floors, through their index only; never a room above it, never its neighbour.
 */
const floors = [
	['ui'],
	['procedure', 'records'],
	['bench', 'judgement'],
	['metrology'],
	['observation'],
	['kits'],
	['chemistry'],
	['glassware']
];

/**
 * Beside its index a room may have a small door of its own for a page that must load little: what
 * stands there needs nothing heavy of the room.
 */
const smallDoors = ['units', 'density', 'glance', 'test-summary'];

/** Rooms that know no Svelte, DOM, storage, clock or hidden randomness. */
const pureRooms = ['procedure', ...floors.slice(2).flat()];

/** @param {string} room */
function barredFor(room) {
	const floor = floors.findIndex((rooms) => rooms.includes(room));
	const above = floors
		.slice(0, floor + 1)
		.flat()
		.filter((other) => other !== room);
	const below = floors.slice(floor + 1).flat();
	const patterns = [];
	if (above.length > 0) {
		patterns.push({
			regex: `^(\\$lib/|(\\.\\./)+(src/)?(lib/)?)(${above.join('|')})(/|$)`,
			message: `${room}/ may not import a room above it or beside it: imports go down the list in DEVELOPERS.md, so that a room can be understood and tested with only what lies beneath it.`
		});
	}
	if (below.length > 0) {
		patterns.push({
			regex: `^(\\$lib/|(\\.\\./)+(src/)?(lib/)?)(${below.join('|')})/(?!(index|${smallDoors.join('|')})(\\.js|\\.ts)?$).+`,
			message: 'Enter a room by its index: the rest of its files are its own business.'
		});
	}
	patterns.push({
		regex: '(^|/)routes(/|$)',
		message: 'Pages bind rooms to the screen; no room may know a page.'
	});
	if (pureRooms.includes(room)) {
		patterns.push({
			regex: '^(svelte|@sveltejs|\\$app|\\$env|dexie)(/|$)',
			message: `${room}/ is pure TypeScript: no Svelte, no storage. Hand in what it needs.`
		});
	}
	if (room === 'bench') {
		patterns.push({
			regex: 'metrology',
			message:
				'The measurement equation is barred from the bench: the model of errors would be tested against itself.'
		});
	}
	return patterns;
}

/** @type {import('eslint').Linter.Config[]} */
export const roomRules = floors.flat().map((room) => ({
	files: [`src/lib/${room}/**/*.{ts,svelte}`],
	rules: { 'no-restricted-imports': ['error', { patterns: barredFor(room) }] }
}));

/** @type {import('eslint').Linter.Config} */
export const purityRules = {
	files: pureRooms.map((room) => `src/lib/${room}/**/*.ts`),
	rules: {
		'no-restricted-globals': [
			'error',
			...[
				'window',
				'document',
				'navigator',
				'localStorage',
				'sessionStorage',
				'indexedDB',
				'performance',
				'setTimeout',
				'setInterval',
				'requestAnimationFrame',
				'fetch',
				'crypto'
			].map((name) => ({ name, message: 'Pure rooms know no browser: hand in what is needed.' }))
		],
		'no-restricted-properties': [
			'error',
			{
				object: 'Date',
				property: 'now',
				message: 'Time is an argument in the pure rooms, so that a run can be replayed.'
			},
			{
				object: 'Math',
				property: 'random',
				message: 'Randomness is addressed and seeded (bench/noise), so that a run can be replayed.'
			}
		],
		'no-restricted-syntax': [
			'error',
			{
				selector: "NewExpression[callee.name='Date'][arguments.length=0]",
				message: 'Time is an argument in the pure rooms.'
			}
		]
	}
};

export default ts.config(
	{ ignores: ['node_modules/', '.svelte-kit/', 'build/', 'test-results/', 'playwright-report/'] },
	js.configs.recommended,
	...ts.configs.recommended,
	...svelte.configs.recommended,
	{
		languageOptions: {
			globals: { ...globals.browser, ...globals.node },
			parserOptions: { projectService: true, extraFileExtensions: ['.svelte'], svelteConfig }
		},
		rules: {
			'no-undef': 'off',
			'@typescript-eslint/no-explicit-any': 'error',
			'@typescript-eslint/no-unused-vars': [
				'error',
				{ argsIgnorePattern: '^_', varsIgnorePattern: '^_' }
			]
		}
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser } },
		// Links are relative to the page, so that the site can be hosted in a sub-folder.
		rules: { 'svelte/no-navigation-without-resolve': 'off' }
	},
	{
		files: ['src/lib/**/*.{ts,svelte}', 'src/routes/**/*.{ts,svelte}'],
		rules: { '@typescript-eslint/no-floating-promises': 'error' }
	},
	...roomRules,
	purityRules
);
