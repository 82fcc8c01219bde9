import { defineConfig } from '@playwright/test';
import { requireBrowser } from './.ci/browser.mjs';

const address = 'http://127.0.0.1:4319';

export default defineConfig({
	testDir: 'tests/browser',
	testMatch: '**/*.spec.ts',
	fullyParallel: true,
	workers: 2,
	// A busy machine must not fail them; nothing is timed here.
	timeout: 360_000,
	expect: { timeout: 45_000 },
	forbidOnly: !!process.env.CI,
	retries: 0,
	reporter: [['list'], ['./.ci/count-playwright.ts']],
	use: {
		baseURL: address,
		headless: true,
		viewport: { width: 1280, height: 800 },
		// A trace of each test takes a seventh of their time; the page as it stood is kept anyway.
		trace: process.env.CI ? 'off' : 'retain-on-failure',
		launchOptions: {
			executablePath: requireBrowser(),
			args: [
				'--no-sandbox',
				'--disable-gpu',
				'--disable-quic',
				'--no-first-run',
				'--disable-background-networking',
				'--disable-component-update',
				'--disable-sync'
			]
		}
	},
	webServer: {
		command: 'npx vite preview --host 127.0.0.1 --port 4319 --strictPort',
		url: address,
		reuseExistingServer: !process.env.CI,
		timeout: 60_000
	}
});
