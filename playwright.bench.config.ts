import { defineConfig } from '@playwright/test';
import house from './playwright.config';

const { webServer } = house;
if (!webServer || Array.isArray(webServer)) throw new Error('the tests have one web server');
/** Another port, where somebody else's site answers on the usual one. */
const port = process.env.BENCH_PORT ?? '4319';
const onPort = (text = '') => text.replace('4319', port);

/** Speeds in a real browser: printed, never asserted, and nothing else runs meanwhile. */
export default defineConfig({
	testDir: 'tests/browser-bench',
	testMatch: '**/*.bench.ts',
	workers: 1,
	timeout: 600_000,
	retries: 0,
	reporter: 'list',
	use: { ...house.use, baseURL: onPort(house.use?.baseURL), trace: 'off', serviceWorkers: 'block' },
	webServer: { ...webServer, command: onPort(webServer.command), url: onPort(webServer.url) }
});
