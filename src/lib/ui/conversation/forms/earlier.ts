import type { Evidence } from '$lib/observation';
import { BlankReader, unitRemark, valueParts } from './blank-reader';
import { plain } from '../../charts/numbers';
import type { EvidenceForm, Told } from './form';
import { doubtsOfValue } from './looks-like';

const ways = [
	{ value: 'own', words: 'this kit' },
	{ value: 'other', words: 'another way' }
] as const;
const daysRange = { low: 0, high: 3650, why: 'That is from 0 days to ten years' };

/** What was dosed and taken up since: both or neither, as one alone says nothing of the change. */
function sinceOf(reader: BlankReader): { dosed?: number; consumed?: number } {
	const dosed = reader.amount('dosed', 'what was dosed');
	const consumed = reader.amount('consumed', 'what was taken up');
	if (dosed !== undefined && consumed === undefined)
		reader.problems.consumed =
			'Say this too (0 if nothing), or leave both empty: then they are thought to balance.';
	if (consumed !== undefined && dosed === undefined)
		reader.problems.dosed =
			'Say this too (0 if nothing), or leave both empty: then they are thought to balance.';
	return dosed === undefined || consumed === undefined ? {} : { dosed, consumed };
}

/** A reading from before, and what should have become of it since. */
export const earlier: EvidenceForm = {
	title: 'An earlier reading, and what was dosed',
	aside:
		'What was dosed and what was taken up go together: say both, or leave both empty. Left empty, they are thought to balance.',
	begin: () => ({ way: 'own' }),
	parts: (blanks, context) => [
		{ blank: 'days', label: 'How many days ago', after: ' days' },
		'ago the water read',
		...valueParts(blanks, context, { value: 'What it read' }),
		'by',
		{ choice: 'way', label: 'By which way', options: ways, after: '.' },
		'Since then it was given',
		{
			blank: 'dosed',
			label: 'What was dosed since then, in the unit of the reading',
			after: ` ${new BlankReader(blanks, context).unitName}`
		},
		'and took up',
		{
			blank: 'consumed',
			label: 'What the tank took up since then, in the unit of the reading',
			after: ` ${new BlankReader(blanks, context).unitName}.`
		}
	],
	remark: (blanks, context) => {
		const doubt = unitRemark(blanks, context);
		if (doubt) return doubt;
		const reader = new BlankReader(blanks, context);
		const { dosed, consumed } = sinceOf(reader);
		if (!reader.isSound || dosed === undefined || consumed === undefined) return null;
		const change = dosed - consumed;
		return change === 0
			? 'So no change is expected since.'
			: `So it should have ${change > 0 ? 'risen' : 'fallen'} by ${plain(Math.abs(change))} ${reader.unitName} since.`;
	},
	doubts: doubtsOfValue,
	read: (blanks, context): Told => {
		const reader = new BlankReader(blanks, context);
		const daysAgo = reader.number('days', 'how many days ago', daysRange);
		const since = sinceOf(reader);
		const isOwn = reader.text('way') !== 'other';
		const evidence: Evidence = {
			kind: 'earlier',
			reading: isOwn ? reader.ownReading('Earlier') : reader.reading('Earlier'),
			daysAgo,
			...since,
			...(isOwn ? {} : { instrument: 'another way' })
		};
		return reader.isSound ? { evidence } : { problems: reader.problems };
	}
};
