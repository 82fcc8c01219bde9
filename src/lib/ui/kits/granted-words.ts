import { typedNumber, type Assumed, type KitDraft } from '$lib/kits';
import { buretteLimitMl, syringeLimitMl } from '$lib/metrology';
import { short } from './kit-words';

/** Something that a value's ± takes for granted, as a sentence with a blank for a better figure. */
export type Granted = {
	field: keyof Assumed;
	before: string;
	after: string;
	/** What the blank is called where the sentence is not seen. */
	label: string;
	/** What an empty blank stands for, in the blank's own unit. */
	taken: string;
	/** Where that comes from. */
	source: string;
};

const size = (text: string | undefined, otherwise: number): number => {
	const typed = typedNumber(text ?? '', 'it', { low: 1e-3, high: 1e3, why: '' });
	return 'value' in typed ? typed.value : otherwise;
};
const perCent = (share: number) => short(100 * share, 2);

/** ISO 7886-1:2017 lets so much of what is expelled be wrong. */
function sampleLimit({ volumes }: KitDraft): number {
	const volumeMl = size(volumes[0]?.volumeMl, 5);
	const largestMl = Math.max(volumeMl, size(volumes[1]?.volumeMl, volumeMl));
	return syringeLimitMl(largestMl, volumeMl) / volumeMl;
}

function sample(draft: KitDraft): Granted {
	const isSyringe = draft.measuredIn === 'syringe';
	return {
		field: 'sampleHalfWidth',
		before: 'The sample is right within ±',
		after: '%.',
		label: 'The sample is right within, per cent',
		taken: isSyringe ? perCent(sampleLimit(draft)) : '2',
		source: isSyringe
			? 'Empty: the most that ISO 7886-1 allows a syringe; most are well within. Weigh ten of your samples to know better.'
			: 'Empty: 2 %, a line on a vial (common practice, no source). Weigh ten of your samples to know better.'
	};
}

function delivery({ by, capacityMl }: KitDraft): Granted[] {
	if (by === 'dropper')
		return [
			{
				field: 'dropSd',
				before: 'The size of its drops is known to',
				after: '% (one standard deviation).',
				label: 'Size of the drops, standard deviation, per cent',
				taken: '4',
				source:
					'Empty: 4 %, from the 10 % either way that USP <1101> allows a dropper. Weigh fifty drops to know better.'
			}
		];
	const full = size(capacityMl, by === 'syringe' ? 1 : 10);
	const limitMl = by === 'syringe' ? syringeLimitMl(full, full) : buretteLimitMl(full);
	return [
		{
			field: 'deliveryHalfWidth',
			before: `The scale of the ${by} is right within ±`,
			after: '%.',
			label: `The scale of the ${by} is right within, per cent`,
			taken: perCent(limitMl / full),
			source:
				by === 'syringe'
					? 'Empty: the most that ISO 7886-1 allows; most are well within. Weigh what a full one gives to know better.'
					: 'Empty: the most that ISO 385 allows a burette of class B.'
		}
	];
}

/** What is taken for granted of a kit like this, in the order of the leaflet. */
export function grantedFor(draft: KitDraft): Granted[] {
	const granted: Granted[] = [
		sample(draft),
		...delivery(draft),
		{
			field: 'titrantSd',
			before: 'The strength of the titrant is known to',
			after: '% (one standard deviation).',
			label: 'Strength of the titrant, standard deviation, per cent',
			taken: '1',
			source:
				'Empty: 1 % for a lot within its date (common practice, no source). A test of a known solution tells more.'
		},
		{
			field: 'colourDrops',
			before: 'I judge the end colour to within',
			after: 'of a drop (one standard deviation).',
			label: 'How finely the end colour is judged, drops, standard deviation',
			taken: '0.25',
			source: 'Empty: a quarter of a drop (common practice, no source).'
		}
	];
	if (draft.by === 'syringe')
		granted.push({
			field: 'tipSdMl',
			before: 'The volume of tip and nozzle is known to',
			after: 'mL (one standard deviation).',
			label: 'Volume of tip and nozzle, standard deviation, mL',
			taken: '0.014',
			source:
				'Empty: 0.15 to 0.20 mL in a 1 mL syringe (common practice, no source). It counts only when the liquid is counted through the tip.'
		});
	return granted;
}
