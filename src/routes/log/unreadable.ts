import type { Records, TestHeader } from '$lib/records';
import { isHeaderSound } from './kept-tests';

const whenIdle = (task: () => void): (() => void) => {
	if (typeof requestIdleCallback === 'function') {
		const handle = requestIdleCallback(task, { timeout: 2000 });
		return () => cancelIdleCallback(handle);
	}
	const timer = setTimeout(task, 50);
	return () => clearTimeout(timer);
};

/**
 * Reads tests one by one while nothing else is to be done, and calls with each that cannot be
 * read. The log itself opens without reading any of them.
 *
 * @returns how to stop
 */
export function unreadableAmong(
	records: Records,
	headers: readonly TestHeader[],
	onUnreadable: (header: TestHeader) => void
): () => void {
	let stop: () => void = () => undefined;
	let isStopped = false;
	const look = async (at: number): Promise<void> => {
		const header = headers[at];
		if (!header || isStopped) return;
		if (!(await isReadable(records, header)) && !isStopped) onUnreadable(header);
		next(at + 1);
	};
	const next = (at: number) => (stop = whenIdle(() => void look(at)));
	next(0);
	return () => {
		isStopped = true;
		stop();
	};
}

async function isReadable(records: Records, header: TestHeader): Promise<boolean> {
	if (!isHeaderSound(header)) return false;
	const [{ loadTestLog }, stored] = await Promise.all([
		import('$lib/procedure'),
		records.tests.load(header.id)
	]);
	if (!stored) return true;
	try {
		loadTestLog({ ...(stored.header.head as object), entries: stored.entries });
		return true;
	} catch {
		return false;
	}
}
