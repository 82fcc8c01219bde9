import { createBench, planOf, runHands, type BenchState, type Plan, type Scenario } from '../bench';
import { unitOf, valueFromMark, type Kit } from '../kits';
import { readingBudget } from '../metrology';
import type { BenchCheckId, Marks, Reading } from '../observation';
import { declaredOf } from './declared-value';
import type { RunState } from './run';
import { slipsIn } from './slips';
import type { TitrationRun } from './titration-run';

/** Names of tests for lists; neutral. */
const testLabels: Record<'first' | BenchCheckId, string> = {
	first: 'Your first test',
	repeatFull: 'Repeat',
	repeatQuick: 'Quick repeat',
	secondMethod: 'Second method',
	reference: 'Reference solution',
	largerSample: 'Test with more water',
	freshLot: 'Test with a fresh bottle',
	freshSample: 'Test of fresh water'
};

/** A value to the decimals customary for its unit, as somebody would write it down. */
export const asWritten = ({ unit, analyte }: Kit, value: number): number =>
	Number(value.toFixed(unitOf(unit, analyte).decimals));

/** A value with what its kit can claim, about 95 %. */
export function readingOfValue(
	kit: Kit,
	id: string,
	label: string,
	value: number,
	marks: Marks,
	sampleVolumeMl: number
): Reading {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? sampleVolumeMl;
	const middle =
		kit.delivery.by === 'dropper' ? { drops: 10 } : { markMl: kit.delivery.capacityMl / 2 };
	const valuePerMl = (valueFromMark(kit, middle).valuePerMl * nominalMl) / sampleVolumeMl;
	const budget = readingBudget(kit, { value, valuePerMl, sampleVolumeMl });
	return {
		id,
		label,
		value,
		expandedUncertainty: budget.expandedUncertainty,
		repeatabilitySd: budget.repeatabilitySd,
		unit: kit.unit,
		marks
	};
}

/** What a finished titration reported, as the learner typed it; null while it has not. */
export function readingOfTitration(titration: TitrationRun): Reading | null {
	const declared = declaredOf(titration);
	if (!declared) return null;
	const { kit } = titration.bench;
	return readingOfValue(
		kit,
		`titration-${titration.number}`,
		testLabels[titration.purpose],
		declared.value,
		declared.marks,
		sampleVolumeFor(kit, titration.bench.volumeId)
	);
}

function byHands(
	run: Pick<RunState, 'kit' | 'seed'>,
	input: {
		truth: Scenario['truth'];
		titration: number;
		plan: Plan;
		id: string;
		label: string;
	}
): Reading | null {
	const bench = createBench({
		kit: run.kit,
		truth: input.truth,
		seed: run.seed,
		titration: input.titration
	});
	// Nobody writes down a mark that is not on the scale: they look again.
	const valued =
		valueByHands(bench, input.plan) ?? valueByHands(bench, { ...input.plan, readOff: 0 });
	if (!valued) return null;
	const { value, marks } = valued;
	const sampleVolumeMl = sampleVolumeFor(run.kit, input.plan.volumeId);
	return readingOfValue(
		run.kit,
		input.id,
		input.label,
		asWritten(run.kit, value),
		marks,
		sampleVolumeMl
	);
}

/** What hands write down and make of it; null when no end came, or their mark lies off the scale. */
function valueByHands(bench: BenchState, plan: Plan): { value: number; marks: Marks } | null {
	const { isEndFound, marks, refilledMl, sampleVolumeMl } = runHands(bench, plan);
	if (!isEndFound) return null;
	const mark =
		marks.drops !== undefined
			? { drops: marks.drops, sampleVolumeMl }
			: { markMl: marks.sealMl ?? marks.lineMl ?? marks.levelMl, refilledMl, sampleVolumeMl };
	try {
		return { value: valueFromMark(bench.kit, mark).value, marks };
	} catch (error) {
		if (error instanceof RangeError) return null;
		throw error;
	}
}

function sampleVolumeFor(kit: Kit, volumeId: string | undefined): number {
	const volume = kit.sample.volumes.find(({ id }) => id === volumeId) ?? kit.sample.volumes[0];
	return volume?.volumeMl ?? Number.NaN;
}

/** Addresses of chance for tests that hands do by themselves, out of the way of the learner's own. */
const EARLIER = 1000;
const QUICK = 2000;

/** The readings from before that a scenario tells of, done on this bench by the hands it names. */
export function earlierReadings(
	run: RunState
): { reading: Reading; daysAgo: number; note: string | null }[] {
	const { scenario } = run;
	return scenario.earlier.flatMap((each, i) => {
		const reading = byHands(run, {
			truth: each.water ? { ...scenario.truth, water: each.water } : scenario.truth,
			titration: EARLIER + i,
			plan: each.hands,
			id: `earlier-${i}`,
			label: each.label
		});
		return reading ? [{ daysAgo: each.daysAgo, note: each.note ?? null, reading }] : [];
	});
}

/** A quick repeat by its name, from 0. */
export const quickRepeatLabel = (n: number): string =>
	n === 0 ? testLabels.repeatQuick : `${testLabels.repeatQuick} ${n + 1}`;

/** A quick repeat: the learner's own way of working, met by fresh chance; null where no end comes of it. */
export function quickRepeat(run: RunState, n: number): Reading | null {
	const first = run.titrations[0];
	const declared = first && declaredOf(first);
	if (!first || !declared) return null;
	const slips = slipsIn(run.kit, first.steps, first.events);
	return byHands(run, {
		truth: run.scenario.truth,
		titration: QUICK + n,
		plan: planOf(first.bench, declared, slips),
		id: `quick-${n}`,
		label: quickRepeatLabel(n)
	});
}
