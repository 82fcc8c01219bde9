import type { DiagnoseOptions, Fault } from '../../src/lib/judgement';
import type { Unit } from '../../src/lib/kits';
import type { MethodFigures } from '../../src/lib/metrology';
import type { Differs, Evidence, EvidenceOf, Reading } from '../../src/lib/observation';

/** A reading as a test by the project's syringe kit claims it, unless it is said otherwise. */
export function reading(id: string, value: number, more: Partial<Reading> = {}): Reading {
	return {
		id,
		label: id,
		value,
		expandedUncertainty: 0.5,
		repeatabilitySd: 0.18,
		unit: 'dKH',
		...more
	};
}

export const test = (
	id: string,
	value: number,
	from: EvidenceOf<'test'>['from'] = 'first',
	differs?: Differs
): EvidenceOf<'test'> => ({
	kind: 'test',
	reading: reading(id, value),
	from,
	...(differs ? { differs } : {})
});

export const reference = (
	id: string,
	value: number,
	more: Partial<EvidenceOf<'reference'>> = {}
): EvidenceOf<'reference'> => ({
	kind: 'reference',
	reading: reading(id, value),
	nominal: 8,
	nominalExpandedUncertainty: 0.15,
	matrix: 'sodiumChloride',
	...more
});

export const second = (
	id: string,
	value: number,
	expandedUncertainty = 0.5,
	more: Partial<EvidenceOf<'secondMethod'>> = {}
): EvidenceOf<'secondMethod'> => {
	const { repeatabilitySd: _, ...read } = reading(id, value, { expandedUncertainty });
	return { kind: 'secondMethod', reading: read, ...more };
};

export const earlier = (
	id: string,
	value: number,
	daysAgo: number,
	more: Partial<EvidenceOf<'earlier'>> = {}
): EvidenceOf<'earlier'> => ({ kind: 'earlier', reading: reading(id, value), daysAgo, ...more });

/** The same evidence in another unit; `size` of it make one dKH. */
export function inUnit(evidence: Evidence, unit: Unit, size: number): Evidence {
	if (!('reading' in evidence)) return evidence;
	const { repeatabilitySd: sd } = evidence.reading;
	const inOther: Reading = {
		...evidence.reading,
		unit,
		value: evidence.reading.value * size,
		expandedUncertainty: evidence.reading.expandedUncertainty * size,
		...(sd === undefined ? {} : { repeatabilitySd: sd * size })
	};
	switch (evidence.kind) {
		case 'reference':
			return {
				...evidence,
				reading: inOther,
				nominal: evidence.nominal * size,
				nominalExpandedUncertainty: evidence.nominalExpandedUncertainty * size
			};
		case 'addition':
			return {
				...evidence,
				reading: inOther,
				added: evidence.added * size,
				addedExpandedUncertainty: evidence.addedExpandedUncertainty * size
			};
		case 'earlier':
			return {
				...evidence,
				reading: inOther,
				...(evidence.expectedChange === undefined
					? {}
					: { expectedChange: evidence.expectedChange * size }),
				...(evidence.dosed === undefined ? {} : { dosed: evidence.dosed * size }),
				...(evidence.consumed === undefined ? {} : { consumed: evidence.consumed * size })
			};
		default:
			return { ...evidence, reading: inOther };
	}
}

/** A kit without any ordinary spread, so that what is compared is the sum and nothing else. */
export const bareMethod: MethodFigures = {
	analyte: 'alkalinity',
	unit: 'dKH',
	delivery: 'syringe',
	valuePerMl: 16,
	sampleVolumeMl: 5,
	dropMl: 1e-4,
	graduationMl: 0.01,
	tipMl: 0.17,
	fullScale: 16,
	endStepDrops: 1,
	sampleWareSd: 0,
	titrantWareSd: 0,
	lotSd: 0,
	endPointSd: 0,
	scatterSd: 0.2,
	sampleSettingSd: 0
};

export const fault = (
	id: string,
	more: Pick<Fault, 'target' | 'scope' | 'sizes' | 'prior'> & Partial<Fault>
): Fault => ({
	id,
	name: id,
	class: 'technique',
	analytes: ['alkalinity'],
	remedy: 'none',
	shownBy: [],
	origin: 'made up for a test',
	...more
});

/** Nothing but the faults given: no change of the water, nothing unforeseen, no questions. */
export const only = (faults: readonly Fault[], more: DiagnoseOptions = {}): DiagnoseOptions => ({
	faults,
	cues: [],
	realChangePrior: 0,
	noneOfThesePrior: 0,
	...more
});
