/**
 * `npm run calibration [-- --count 3000 --ordered 200 --seed 1 --only prior,bench --threads 2]`:
 * the calibration tables. `-- --cases FILE.json [--priors FILE.json]`: one table of somebody's own cases.
 * The study is TypeScript: it is bundled into a folder of its own first, and removed after.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'vite';

/** @type {(name: string, text: string, least: number) => number} */
const whole = (name, text, least) => {
	const number = Number(text);
	if (!(Number.isInteger(number) && number >= least))
		throw new RangeError(`--${name} must be a whole number from ${least} up; found ${text}`);
	return number;
};
const { values } = parseArgs({
	options: {
		count: { type: 'string', default: '3000' },
		ordered: { type: 'string', default: '200' },
		seed: { type: 'string', default: '1' },
		only: { type: 'string', default: '' },
		threads: { type: 'string', default: String(availableParallelism()) },
		cases: { type: 'string' },
		priors: { type: 'string' }
	}
});

const here = fileURLToPath(new URL('../tests/studies/calibration/', import.meta.url));
const outDir = mkdtempSync(join(tmpdir(), 'halfdrop-calibration-'));
try {
	await build({
		configFile: false,
		logLevel: 'warn',
		root: here,
		ssr: { noExternal: true, target: 'node' },
		build: {
			ssr: true,
			outDir,
			emptyOutDir: true,
			minify: false,
			rollupOptions: {
				input: { study: join(here, 'study.ts'), worker: join(here, 'worker.ts') },
				output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' }
			}
		}
	});
	const { runStudy } = await import(pathToFileURL(join(outDir, 'study.mjs')).href);
	await runStudy({
		count: whole('count', values.count, 1),
		orderedCount: whole('ordered', values.ordered, 0),
		seed: whole('seed', values.seed, 0),
		only: values.only.split(',').filter(Boolean),
		threads: whole('threads', values.threads, 1),
		casesFile: values.cases,
		priorsFile: values.priors,
		workerFile: pathToFileURL(join(outDir, 'worker.mjs'))
	});
} finally {
	rmSync(outDir, { recursive: true, force: true });
}
