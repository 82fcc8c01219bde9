import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const elsewhere = [
	'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
	'/Applications/Chromium.app/Contents/MacOS/Chromium',
	'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
	'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe'
];

/**
 * Any Chrome or Chromium of this machine: CHROME_PATH first, then the PATH, then the usual places.
 *
 * @returns {string | null} its path, or null when there is none
 */
export function findBrowser() {
	if (process.env.CHROME_PATH && existsSync(process.env.CHROME_PATH))
		return process.env.CHROME_PATH;
	for (const folder of (process.env.PATH ?? '').split(delimiter)) {
		for (const name of names) {
			const file = join(folder, name);
			try {
				accessSync(file, constants.X_OK);
				return file;
			} catch {
				continue;
			}
		}
	}
	return elsewhere.find((file) => existsSync(file)) ?? null;
}

/**
 * The browser for the tests, installing Debian's package when none is found and that is allowed.
 *
 * @returns {string} path of the browser
 */
export function requireBrowser() {
	const found = findBrowser();
	if (found) return found;
	const mayInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0;
	if (mayInstall) {
		console.log('No Chromium found: installing the package "chromium".');
		const options = { stdio: /** @type {const} */ ('inherit') };
		execFileSync('apt-get', ['-o', 'DPkg::Lock::Timeout=400', 'update', '-qq'], options);
		execFileSync('apt-get', ['-o', 'DPkg::Lock::Timeout=400', 'install', '-y', '-qq', 'chromium'], {
			...options,
			env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
		});
		const installed = findBrowser();
		if (installed) return installed;
	}
	throw new Error(
		'No Chrome or Chromium found: install one (Debian: sudo apt-get install chromium) or set CHROME_PATH to it.'
	);
}
