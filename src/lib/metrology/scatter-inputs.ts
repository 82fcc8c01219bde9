import type { Kit } from '../kits';
import { usedMlIn, type BudgetInput, type BudgetLineId, type BudgetReading } from './budget-input';
import { degreesOfDoubt, DOUBT, even, step } from './judged';
import { colourFigure } from './budget-figures';

/**
 * An eye lays an edge against a line to about a fifth of a division; written down to half a division
 * that makes a quarter in all, the middle of the 0.2 to 0.3 that is taken for a fine scale (common
 * practice, no source).
 */
export const ALIGNED_TO_DIVISIONS = 0.2;
export const READ_TO_DIVISIONS = 0.5;
/** Seal of a sample syringe set to its line: a quarter of a mm on a scale about 40 mm long (ISO 7886-1: 36 to 44 mm for 5 and 10 mL; from memory). */
const SET_MM = 0.25;
const SCALE_MM = 40;
/** Meniscus set to the line of a vial about 20 mm wide, mm; common practice, no source. */
const MENISCUS_MM = 0.4;
const VIAL_BORE_MM = 20;
/**
 * Single drops from a plastic bottle differ by about 1.8 of 43 µL. Source: repeatability of 19 types of
 * eye-drop bottle, mean 5.07 µL as 1.96 √2 standard deviations (abstract of a published study).
 */
export const DROP_SPREAD = 0.042;
/** A bottle is not held and pressed the same each time; common practice, no source. */
const HOLDING = 0.01;

/** Setting a sample to its mark, standard uncertainty in mL. */
function settingSdMl({ sample }: Kit, sampleVolumeMl: number): number {
	if (sample.measuredIn === 'vialLine')
		return even((MENISCUS_MM * Math.PI * (VIAL_BORE_MM / 2) ** 2) / 1000);
	const capacityMl = Math.max(sampleVolumeMl, ...sample.volumes.map((each) => each.volumeMl));
	return even((SET_MM * capacityMl) / SCALE_MM);
}

/** One place of the seal, the level or the line: where it is set, or where it is read. */
const setDivisions = ALIGNED_TO_DIVISIONS;
const readDivisions = (toDivisions: number) => Math.hypot(ALIGNED_TO_DIVISIONS, step(toDivisions));

/** Standard uncertainty of one mark that is read between lines, mL. */
export function markSdMl(graduationMl: number, readToDivisions = READ_TO_DIVISIONS): number {
	if (!(graduationMl > 0))
		throw new RangeError(`graduationMl must be above 0; found ${graduationMl}`);
	return graduationMl * readDivisions(readToDivisions);
}

/** Marks of a test, in words: every refill brings a start and an end of its own, two more marks. */
const marksWords = (refills: number) =>
	refills === 0 ? 'reading the mark' : `reading the marks, ${2 * (1 + refills)} in all`;

/** Start and end of each filling, mL: a start is set to the full mark, or read. */
function marksSdMl(graduationMl: number, reading: BudgetReading): number {
	const end = readDivisions(reading.readToDivisions ?? READ_TO_DIVISIONS);
	const start = reading.isStartRead ? end : setDivisions;
	return graduationMl * Math.hypot(start, end) * Math.sqrt(1 + (reading.refills ?? 0));
}

/** What falls anew at each test. 'whole drops' is the step that repeats of one water may share. */
export function scatterInputs(kit: Kit, reading: BudgetReading): BudgetInput[] {
	const { delivery, sample } = kit;
	const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
	const sampleVolumeMl = reading.sampleVolumeMl ?? nominalMl;
	const inputs: BudgetInput[] = [];
	const add = (
		id: BudgetLineId,
		name: string,
		standardUncertainty: number,
		sensitivity: number,
		degreesOfFreedom: number,
		origin: string
	) =>
		inputs.push({
			id,
			name,
			kind: 'scatter',
			standardUncertainty,
			sensitivity,
			degreesOfFreedom,
			origin
		});
	const perMl = reading.valuePerMl;
	const judged = degreesOfDoubt(DOUBT.unsourced);
	const endStepMl = delivery.dropMl * (reading.endStepDrops ?? 1);
	add(
		'wholeDrops',
		endStepMl < delivery.dropMl ? 'half-drops' : 'whole drops',
		step(endStepMl),
		perMl,
		Number.POSITIVE_INFINITY,
		'the last addition is even over its size (JCGM 100, F.2.2.1)'
	);
	const colour = colourFigure(kit);
	add(
		'judgingColour',
		'judging the colour',
		delivery.dropMl * colour.share,
		perMl,
		degreesOfDoubt(colour.doubt),
		colour.origin
	);
	add(
		'settingSample',
		'setting the sample to its mark',
		settingSdMl(kit, sampleVolumeMl) / sampleVolumeMl,
		Math.abs(reading.value),
		judged,
		sample.measuredIn === 'syringe'
			? 'a quarter of a mm on a scale of 40 mm; common practice, no source'
			: '0.4 mm of meniscus in a vial 20 mm wide; common practice, no source'
	);
	if (delivery.by === 'dropper') {
		const drops = usedMlIn(reading) / delivery.dropMl;
		add(
			'dropsUnlike',
			'drops unlike each other',
			delivery.dropMl * Math.hypot(DROP_SPREAD * Math.sqrt(drops), HOLDING * drops),
			perMl,
			judged,
			'4 % a drop (published study of dropper bottles), 1 % for the hold; no source for the latter'
		);
	} else
		add(
			'readingMark',
			marksWords(reading.refills ?? 0),
			marksSdMl(delivery.graduationMl, reading),
			perMl,
			degreesOfDoubt(DOUBT.sourced),
			'a quarter of a division a mark; common practice, no source'
		);
	return inputs;
}
