import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with one plain line, `N passed, N failed`, that people and machines can both find. */
export default class CountReporter implements Reporter {
	onTestRunEnd(testModules: ReadonlyArray<TestModule>): void {
		let passed = 0;
		let failed = 0;
		let skipped = 0;
		for (const testModule of testModules) {
			if (testModule.state() === 'failed' && testModule.children.size === 0) failed++;
			for (const test of testModule.children.allTests()) {
				const state = test.result().state;
				if (state === 'passed') passed++;
				else if (state === 'failed') failed++;
				else skipped++;
			}
		}
		console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`);
	}
}
