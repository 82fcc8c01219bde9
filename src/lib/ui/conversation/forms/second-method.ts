import type { Evidence } from '$lib/observation';
import { BlankReader, unitRemark, valueParts } from './blank-reader';
import { isOfTheTank, type EvidenceForm, type Told } from './form';
import { doubtsOfValue } from './looks-like';

const methods = [
	{ value: 'kit', words: 'another kit' },
	{ value: 'photometer', words: 'a photometer' },
	{ value: 'laboratory', words: 'a laboratory' },
	{ value: 'probe', words: 'a titration with a pH probe' }
] as const;
const names = {
	kit: 'Another kit',
	photometer: 'Photometer',
	laboratory: 'Laboratory',
	probe: 'pH probe'
} as const;
/** As reports write it; 'about 95 %' is k = 2. */
const factors = [
	{ value: '2', words: 'about 19 times in 20 (k = 2)' },
	{ value: '1', words: 'one standard deviation (k = 1)' },
	{ value: '3', words: 'nearly always (k = 3)' }
] as const;
const kinds = [
	{ value: 'total', words: 'total alkalinity' },
	{ value: 'carbonate', words: 'carbonate only, without borate' }
] as const;
const portions = [
	{ value: 'same', words: 'the same water' },
	{ value: 'fresh', words: 'water taken anew' }
] as const;
const reportIds = ['total', 'carbonate'] as const;
const methodIds = ['kit', 'photometer', 'laboratory', 'probe'] as const;

/** The tank's water by another method. */
export const secondMethod: EvidenceForm = {
	title: 'A second method',
	aside:
		'The ± stands in its leaflet or report. Left empty, it is taken to be no better than your own kit.',
	logRole: () => 'secondMethod',
	logTakes: (line) => !line.isSameKit && isOfTheTank(line),
	begin: () => ({ method: 'kit', k: '2', reports: 'total', portion: 'same' }),
	parts: (blanks, context) => [
		{ choice: 'method', label: 'Which method', options: methods, after: ',' },
		'called',
		{
			blank: 'instrument',
			label: 'Its name',
			kind: 'words',
			width: 9,
			taken: 'a name',
			after: ','
		},
		'read',
		{ choice: 'portion', label: 'Which water', options: portions },
		'as',
		...valueParts(blanks, context, { value: 'What it read', after: '.' }),
		'Its ± means',
		{
			choice: 'k',
			label: 'What the ± means',
			options: factors,
			...(context.analyte === 'alkalinity' ? { after: '.' } : {})
		},
		...(context.analyte === 'alkalinity'
			? ['It reports', { choice: 'reports', label: 'What it reports', options: kinds } as const]
			: [])
	],
	helpedBy: ({ method }, { analyte }) =>
		method === 'probe' && analyte === 'alkalinity' ? 'probeTitration' : null,
	remark: unitRemark,
	doubts: doubtsOfValue,
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const method = reader.oneOf('method', methodIds, 'kit');
		const instrument = reader.text('instrument');
		const evidence: Evidence = {
			kind: 'secondMethod',
			reading: reader.reading(instrument || names[method]),
			method,
			instrument: instrument || names[method],
			// What is taken for an empty ± is that of the own kit, which is about 95 %.
			coverageFactor: reader.text('u') === '' ? 2 : Number(reader.oneOf('k', ['1', '2', '3'], '2')),
			...(context.analyte === 'alkalinity'
				? { reports: reader.oneOf('reports', reportIds, 'total') }
				: {}),
			...(reader.text('portion') === 'fresh' ? { sampling: 'taken anew' } : {})
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};

/** Names of the second methods that evidence speaks of. */
export function instrumentsIn(evidence: readonly Evidence[]): string[] {
	const named = evidence.flatMap((each) =>
		(each.kind === 'secondMethod' || each.kind === 'reference') && each.instrument
			? [each.instrument]
			: []
	);
	return [...new Set(named)];
}
