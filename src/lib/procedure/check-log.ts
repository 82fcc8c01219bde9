import * as z from 'zod/mini';
import { AnalyteSchema, KitSchema } from '../kits';
import { CheckEventSchema, entrySchemaOf, type CheckEvent } from '../observation';
import { CHECK_LOG_FORMAT, type CheckLog } from './check-state';
import { loadLog, type Upcasts } from './log';

export const CheckLogSchema = z
	.strictObject({
		format: z.literal(CHECK_LOG_FORMAT),
		id: z.string().check(z.minLength(1)),
		/** ms since 1970, as are the times of the entries. */
		startedAtEpochMs: z.int().check(z.nonnegative()),
		analyte: AnalyteSchema,
		/** Frozen when the check begins; null where there is nothing but a number. */
		kit: z.nullable(KitSchema),
		kitVersion: z.nullable(z.int().check(z.nonnegative())),
		entries: z.array(entrySchemaOf<CheckEvent>(CheckEventSchema))
	})
	.check(
		z.refine(({ kit, kitVersion }) => (kit === null) === (kitVersion === null), {
			path: ['kitVersion'],
			error: 'a version where there is a kit, and null where there is none'
		}),
		z.refine(
			({ kit, analyte }) =>
				kit === null || kit.analyte === analyte || kit.byDifference?.gives === analyte,
			{ path: ['analyte'], error: 'what the kit measures, or gives by difference' }
		)
	);

/** Brings a check of an older form one step up, by the form's number. None yet. */
const upcasts: Upcasts = {};

/**
 * A check from outside (storage, a file), brought up to date and validated.
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadCheckLog(unknownLog: unknown): CheckLog {
	return loadLog(unknownLog, upcasts, CheckLogSchema, 'the check');
}
