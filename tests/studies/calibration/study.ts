import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { casesOfFile, priorsOfFile } from './file-cases';
import { judge, type Judged } from './judge';
import type { Ordered } from './orders';
import { namesOfMistakes } from './outside-names';
import { reportOf } from './report';
import { tableIds, tables, unitIn, type Done, type TableId, type Task } from './tables';

export type StudyOptions = {
	/** Cases judged, and cases checked one after the other, in each table. */
	count: number;
	orderedCount: number;
	seed: number;
	only: readonly TableId[];
	threads: number;
	/** Files with somebody's own cases and priors. */
	casesFile?: string;
	priorsFile?: string;
	workerFile: URL;
};

const PIECE = 60;
const pieces = (table: TableId, of: Task['of'], count: number, size: number): Task[] =>
	Array.from({ length: Math.ceil(count / size) }, (_, i) => ({
		table,
		of,
		from: i * size,
		to: Math.min(count, (i + 1) * size),
		seed: 0
	}));

const readJson = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));

/** Somebody's own cases from a file. */
function ownCases(file: string, priors: Record<string, number> | undefined, seed: number): string {
	const cases = casesOfFile(readJson(file), namesOfMistakes);
	const judged = cases.map((each) => judge(each, priors ? { priors } : {}));
	return reportOf(`Cases of ${file}`, judged, [], seed);
}

/** Hands the tasks to workers, and puts what they did in order of the tasks. */
async function work(
	tasks: readonly Task[],
	{ threads, workerFile }: StudyOptions
): Promise<Done[]> {
	const done: Done[] = [];
	let next = 0;
	let finished = 0;
	const started = Date.now();
	const one = (): Promise<void> =>
		new Promise((resolve, reject) => {
			const worker = new Worker(workerFile);
			let at = -1;
			const go = () => {
				at = next++;
				const task = tasks[at];
				if (!task) {
					void worker.terminate();
					resolve();
				} else worker.postMessage(task);
			};
			worker.on('message', (result: Done) => {
				done[at] = result;
				finished++;
				const seconds = Math.round((Date.now() - started) / 1000);
				if (finished % 10 === 0 || finished === tasks.length)
					process.stderr.write(`${finished} of ${tasks.length} pieces, ${seconds} s\n`);
				go();
			});
			worker.on('error', reject);
			go();
		});
	await Promise.all(Array.from({ length: threads }, one));
	return done;
}

/** The calibration tables, printed as text. */
export async function runStudy(options: StudyOptions): Promise<void> {
	const { count, orderedCount, seed, only, casesFile, priorsFile } = options;
	const priors = priorsFile === undefined ? undefined : priorsOfFile(readJson(priorsFile));
	if (casesFile !== undefined) {
		console.log(ownCases(casesFile, priors, seed));
		return;
	}
	const unknown = only.filter((id) => !tableIds.includes(id));
	if (unknown.length > 0)
		throw new RangeError(`only must be of ${tableIds.join(', ')}; found ${unknown.join(', ')}`);
	const chosen = tableIds.filter((id) => only.length === 0 || only.includes(id));
	const tasks = chosen
		.flatMap((table) => [
			...pieces(table, 'judged', count, PIECE),
			...pieces(table, 'ordered', orderedCount, 5)
		])
		.map((task) => ({ ...task, seed, ...(priors ? { options: { priors } } : {}) }));
	const done = await work(tasks, options);
	for (const table of chosen) {
		const own = done.filter((_, i) => tasks[i]?.table === table);
		const judged: Judged[] = own.flatMap((each) => each.judged);
		const ordered: Ordered[] = own.flatMap((each) => each.ordered);
		console.log(`\n${reportOf(tables[table].title, judged, ordered, seed, unitIn(table))}`);
		const slowest = Math.max(...judged.map(({ ms }) => ms));
		const mean = judged.reduce((sum, { ms }) => sum + ms, 0) / judged.length;
		console.log(`\nA diagnosis took ${mean.toFixed(0)} ms, at most ${slowest.toFixed(0)} ms.`);
	}
}
