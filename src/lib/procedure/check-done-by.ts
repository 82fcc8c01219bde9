import type { Differs } from '../observation';
import type { TankTitration, TestState } from './tank-test';
import type { TestResult } from './test-result';

/** How a test was done, as far as others of the same check may differ from it. */
export type DoneBy = {
	kitId: string;
	/** What was not said is not known to differ. */
	tester?: string;
	lot?: string;
	takenAtEpochMs?: number;
	sampleVolumeMl: number;
};

/** Names in evidence are no longer than this. */
export const named = (name: string) => name.slice(0, 200);

/** Who did a titration, where it was said for it or for the whole test. */
export function handsOf(state: TestState, titration: TankTitration | undefined): string | null {
	return titration?.by || state.circumstances.tester || null;
}

/** How the first titration of a test that counts was done, for others to be compared with it. */
export function doneByOf(state: TestState, { counted }: Pick<TestResult, 'counted'>): DoneBy {
	const { lot, takenAtEpochMs } = state.circumstances;
	const [first] = counted;
	const hands = handsOf(state, first && state.titrations[first.titration]);
	return {
		kitId: state.kit.id,
		...(hands ? { tester: hands } : {}),
		...(lot ? { lot } : {}),
		...(takenAtEpochMs === undefined ? {} : { takenAtEpochMs }),
		sampleVolumeMl: first?.sampleVolumeMl ?? Number.NaN
	};
}

/** Both were said, and they are not the same. */
const isOther = <T>(now: T | undefined, then: T | undefined): now is T =>
	now !== undefined && then !== undefined && now !== then;

/** In what a test of the evidence differed from the test in question. */
export function differsOf(now: Omit<DoneBy, 'kitId'>, then: Omit<DoneBy, 'kitId'>): Differs {
	const ratio = now.sampleVolumeMl / then.sampleVolumeMl;
	const { lot, tester, takenAtEpochMs } = now;
	return {
		...(isOther(lot, then.lot) ? { lot: named(lot) } : {}),
		...(isOther(tester, then.tester) ? { hands: named(tester) } : {}),
		...(isOther(takenAtEpochMs, then.takenAtEpochMs)
			? { sampling: `taken at ${takenAtEpochMs}` }
			: {}),
		...(ratio !== 1 && ratio >= 0.1 && ratio <= 10 ? { sampleRatio: ratio } : {})
	};
}
