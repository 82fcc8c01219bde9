// Installs the packages of the lockfile when they are not there or not those of the lockfile.
import { execSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
	console.error(`Halfdrop needs Node 20.19 or later; found ${process.versions.node}.`);
	process.exit(1);
}

const marker = 'node_modules/.package-lock.json';
/** @param {string} file */
const packagesOf = (file) => Object.keys(JSON.parse(readFileSync(file, 'utf8')).packages).length;
const isComplete =
	existsSync(marker) &&
	statSync(marker).mtimeMs >= statSync('package-lock.json').mtimeMs - 1000 &&
	packagesOf(marker) > 100;
if (!isComplete) {
	console.log('Installing the packages of the lockfile …');
	execSync('npm ci --no-audit --no-fund', { stdio: 'inherit' });
}
