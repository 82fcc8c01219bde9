import type { FullConfig, Reporter, Suite, TestCase } from '@playwright/test/reporter';

/** Closes a run with one plain line, `N passed, N failed`, like the other test runner's. */
export default class CountReporter implements Reporter {
	private tests: TestCase[] = [];

	onBegin(_config: FullConfig, suite: Suite): void {
		this.tests = suite.allTests();
	}

	onEnd(): void {
		const outcomes = this.tests.map((test) => test.outcome());
		const passed = outcomes.filter((o) => o === 'expected' || o === 'flaky').length;
		const skipped = outcomes.filter((o) => o === 'skipped').length;
		const failed = outcomes.length - passed - skipped;
		console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`);
	}

	printsToStdio(): boolean {
		return true;
	}
}
