import type { Shrink, ShrinkBy } from '$lib/metrology';

const words: Record<ShrinkBy, string> = {
	largerSample: 'with the larger sample',
	halfDrops: 'with half-drops at the end, touched off at the glass',
	repeat: 'with a repeat',
	twoRepeats: 'with two repeats',
	weighedSample: 'with the sample weighed, five together',
	weighedDelivery: 'with the syringe’s or burette’s deliveries weighed, ten together',
	weighedDrops: 'with fifty drops weighed',
	finerReading: 'with the mark read to a fifth of a division'
};

/** What would make the ± smaller, as it goes on from 'It would be': 'with 10 mL of water'. */
export function shrinkWords({ by, volumeMl }: Shrink): string {
	return by === 'largerSample' && volumeMl !== undefined
		? `with ${volumeMl} mL of water`
		: words[by];
}
