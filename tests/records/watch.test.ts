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
	test('where windows cannot talk, all else works', async () => {
		vi.stubGlobal('BroadcastChannel', undefined);
		const records = await openRecords('watch-3');
		const stop = records.watchLog('a', () => undefined);
		await records.tests.begin(testHeader('a'));
		expect(await records.tests.append('a', 0, fell('0'), testHeader('a'))).toEqual({ kept: true });
		stop();
	});
});
