import 'fake-indexeddb/auto';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { openRecords } from '../../src/lib/records';
import { watchOver } from '../../src/lib/records/watch';
import { fell, testHeader } from './made';

afterEach(() => vi.unstubAllGlobals());
const aWhile = () => new Promise((done) => setTimeout(done, 50));

describe('two windows', () => {
	test('the one left behind is told at once, before it adds anything', async () => {
		const [here, there] = [await openRecords('watch-1'), await openRecords('watch-1')];
		await here.tests.begin(testHeader('a'));
		await here.tests.append('a', 0, fell('0'), testHeader('a'));
		const told = vi.fn();
		const stop = here.watchLog('a', told);
		await there.tests.append('a', 1, fell('1'), testHeader('a'));
		await vi.waitFor(() => expect(told).toHaveBeenCalledTimes(1));
		stop();
		await there.tests.append('a', 2, fell('2'), testHeader('a'));
		await aWhile();
		expect(told).toHaveBeenCalledTimes(1);
	});
	test('are not told of themselves, nor of another log', async () => {
		const [here, there] = [watchOver('watch-2', 'here'), watchOver('watch-2', 'there')];
		const told = vi.fn();
		const stop = here.watch('a', told);
		here.announce('a');
		there.announce('b');
		watchOver('watch-other', 'there').announce('a');
		await aWhile();
		expect(told).not.toHaveBeenCalled();
		there.announce('a');
		await vi.waitFor(() => expect(told).toHaveBeenCalledTimes(1));
		stop();
	});
	test('a window that listens speaks over the channel it has open, and is heard', async () => {
		const opened = vi.fn();
		vi.stubGlobal(
			'BroadcastChannel',
			class extends BroadcastChannel {
				constructor(name: string) {
					super(name);
					opened(name);
				}
			}
		);
		const [here, there] = [watchOver('watch-4', 'here'), watchOver('watch-4', 'there')];
		const told = vi.fn();
		const stops = [there.watch('a', told), here.watch('a', () => undefined)];
		here.announce('a');
		here.announce('a');
		await vi.waitFor(() => expect(told).toHaveBeenCalledTimes(2));
		expect(opened).toHaveBeenCalledTimes(2);
		for (const stop of stops) stop();
		// Nobody listens here any more: it opens one for the word, and closes it.
		here.announce('a');
		expect(opened).toHaveBeenCalledTimes(3);
	});
	test('where windows cannot talk, all else works', async () => {
		vi.stubGlobal('BroadcastChannel', undefined);
		const records = await openRecords('watch-3');
		const stop = records.watchLog('a', () => undefined);
		await records.tests.begin(testHeader('a'));
		expect(await records.tests.append('a', 0, fell('0'), testHeader('a'))).toEqual({ kept: true });
		stop();
	});
});
