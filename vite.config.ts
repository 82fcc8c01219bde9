import { availableParallelism } from 'node:os';
import { sveltekit } from '@sveltejs/kit/vite';
import { svelteTesting } from '@testing-library/svelte/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
	build: { target: 'es2022' },
	worker: { format: 'es' },
	test: {
		reporters: ['default', './.ci/count-reporter.ts'],
		// Property tests play whole runs; a busy machine must not fail them. Nothing is timed here.
		testTimeout: 60_000,
		// Left to itself it keeps one core free: on two of them that is half of the time.
		maxWorkers: availableParallelism(),
		projects: [
			{
				extends: true,
				test: {
					// The pure rooms run in plain node, which proves that they need no DOM.
					name: 'unit',
					environment: 'node',
					// Nor do they keep anything between files, so that they are loaded once and not for each file.
					isolate: false,
					include: ['tests/**/*.test.ts'],
					exclude: ['tests/ui/**', 'tests/routes/**', 'tests/browser/**']
				}
			},
			{
				extends: true,
				plugins: [svelteTesting()],
				test: {
					name: 'component',
					environment: 'jsdom',
					include: ['tests/ui/**/*.test.ts', 'tests/routes/**/*.test.ts'],
					setupFiles: ['tests/ui/setup.ts']
				}
			}
		],
		benchmark: { include: ['tests/benchmarks/**/*.bench.ts'] }
	}
});
