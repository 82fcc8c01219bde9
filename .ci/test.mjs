// Every test of the project, in the order in which a fault is cheapest to find. `npm test` calls it.
import { execSync } from 'node:child_process';

/** @type {[string, string][]} */
const parts = [
	['packages', 'node .ci/prepare.mjs'],
	[
		'types',
		'npx svelte-kit sync && npx svelte-check --tsconfig ./tsconfig.json --threshold warning'
	],
	['lint and form', 'npx prettier --check . && npx eslint .'],
	['unit, reference and component tests', 'npx vitest run'],
	['build', 'npx vite build'],
	['real browser', 'npx playwright test']
];

/** @type {string[]} */
const times = [];
for (const [name, command] of parts) {
	console.log(`\n== ${name}`);
	const began = process.hrtime.bigint();
	try {
		execSync(command, { stdio: 'inherit' });
	} catch {
		console.error(`\n${name}: failed. The rest was not run.`);
		process.exit(1);
	}
	times.push(`${name} ${Math.round(Number(process.hrtime.bigint() - began) / 1e9)} s`);
}
console.log(`\nAll parts passed: ${times.join(', ')}.`);
