import * as z from 'zod/mini';
import { KitSchema, type Kit } from '../kits';
import { entrySchemaOf, TestEventSchema, type Entry, type TestEvent } from '../observation';
import { loadLog, type Upcasts } from './log';

export const TEST_LOG_FORMAT = 1;
export const TestLogSchema = z.strictObject({
	format: z.literal(TEST_LOG_FORMAT),
	id: z.string().check(z.minLength(1)),
	/** ms since 1970, as are the times of the entries. */
	startedAtEpochMs: z.int().check(z.nonnegative()),
	/** Frozen: what the leaflet was taken to say on that day, and which version of it that was. */
	kit: KitSchema,
	kitVersion: z.int().check(z.nonnegative()),
	entries: z.array(entrySchemaOf<TestEvent>(TestEventSchema))
});
export type TestEntry = Entry<TestEvent>;
/** A test beside the tank: the whole truth about it, only ever appended to. */
export type TestLog = {
	format: typeof TEST_LOG_FORMAT;
	id: string;
	startedAtEpochMs: number;
	kit: Kit;
	kitVersion: number;
	entries: TestEntry[];
};

/** Brings a test of an older form one step up, by the form's number. None yet. */
const upcasts: Upcasts = {};

/**
 * A test from outside (storage, a file), brought up to date and validated.
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadTestLog(unknownLog: unknown): TestLog {
	return loadLog(unknownLog, upcasts, TestLogSchema, 'the test');
}
