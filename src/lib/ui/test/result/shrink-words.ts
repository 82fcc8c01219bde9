import type { Delivery } from '$lib/kits';
import type { Shrink, ShrinkBy } from '$lib/metrology';

const words: Record<Exclude<ShrinkBy, 'weighedDelivery'>, string> = {
	largerSample: 'with the larger sample',
	halfDrops: 'with half-drops at the end, touched off at the glass',
	repeat: 'with a repeat',
	twoRepeats: 'with two repeats',
	weighedSample: 'with five samples weighed together',
	weighedDrops: 'with fifty drops weighed together',
	finerReading: 'with the mark read to a fifth of a division'
};

/** What would make the ± smaller, as it goes on from 'It would be': 'with 10 mL of water'. */
export function shrinkWords({ by, volumeMl }: Shrink, ware: Delivery['by']): string {
	if (by === 'weighedDelivery') return `with ten portions from the ${ware} weighed together`;
	return by === 'largerSample' && volumeMl !== undefined
		? `with ${volumeMl} mL of water`
		: words[by];
}
