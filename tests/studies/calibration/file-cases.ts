import * as z from 'zod/mini';
import { faultClasses } from '../../../src/lib/judgement';
import { UnitSchema } from '../../../src/lib/kits';
import { usualMethodFigures, type MethodFigures } from '../../../src/lib/metrology';
import { EvidenceSchema } from '../../../src/lib/observation';
import { usualBand, type CalibrationCase } from './case';

/**
 * Anybody's own cases: a list, or an object with a list under `cases`. Each has its evidence and the
 * truth; `faults` of the truth are ids of the catalogue ('realChange' for the water) where there is
 * one, and always a class. Fields not named here may stand there and are not looked at.
 */
const CauseSchema = z.object({
	id: z.string(),
	class: z.enum(faultClasses),
	alsoFair: z.optional(z.array(z.enum(faultClasses))),
	isOdd: z.optional(z.boolean())
});
const FileCaseSchema = z.object({
	set: z.optional(z.string()),
	evidence: z.array(EvidenceSchema).check(z.minLength(1)),
	method: z.optional(z.looseObject({ valuePerMl: z.number().check(z.positive()) })),
	band: z.optional(
		z.union([
			z.object({ low: z.number(), high: z.number(), unit: UnitSchema }),
			z.object({ lowDkh: z.number(), highDkh: z.number() })
		])
	),
	truth: z.object({ trueValueDkh: z.number(), faults: z.array(CauseSchema) })
});
const FileSchema = z.object({ cases: z.array(FileCaseSchema) });

/**
 * Cases of a file.
 *
 * @param names what the catalogue calls a cause of the file, where it has another name there
 * @throws RangeError naming the field that does not fit
 */
export function casesOfFile(
	file: unknown,
	names: Readonly<Record<string, readonly string[]>> = {}
): CalibrationCase[] {
	const whole = Array.isArray(file) ? { cases: file as unknown[] } : file;
	const read = z.safeParse(FileSchema, whole);
	if (!read.success)
		throw new RangeError(`cases do not fit: ${z.prettifyError(read.error)}`, { cause: read.error });
	return read.data.cases.map(({ set, evidence, method, band, truth }): CalibrationCase => ({
		set: set ?? 'from the file',
		evidence,
		method: (method as MethodFigures | undefined) ?? usualMethodFigures,
		band: !band
			? usualBand
			: 'low' in band
				? band
				: { low: band.lowDkh, high: band.highDkh, unit: 'dKH' },
		truth: {
			trueValue: truth.trueValueDkh,
			causes: truth.faults.map(({ id, class: own, alsoFair = [], isOdd = false }) => {
				const ids = names[id] ?? [id];
				return { ids, classes: [own, ...alsoFair], isOdd: isOdd && !names[id] };
			})
		},
		ask: null
	}));
}

/** Priors by fault id, as a file has them. */
export function priorsOfFile(file: unknown): Record<string, number> {
	const read = z.safeParse(z.record(z.string(), z.number().check(z.gte(0), z.lt(1))), file);
	if (!read.success) throw new RangeError(`priors do not fit: ${z.prettifyError(read.error)}`);
	return read.data;
}
