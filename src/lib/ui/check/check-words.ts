import type { CheckOffer } from '$lib/bench';
import type { PracticeCheckId } from '$lib/observation';

/** A check as a line of the list: what it is, what it can show, what it costs. */
export type CheckLine = {
	check: PracticeCheckId;
	title: string;
	detail: string;
	minutes: number;
	/** Titrant it will take, mL, as far as the first test tells; null when it takes none. */
	titrantMl: number | null;
	/** Done at the bench by hand; the others give their result at once. */
	isAtBench: boolean;
};

type Words = { title: string; detail: string; isAtBench: boolean; takesTitrant: boolean };

const wordsOf = {
	repeatFull: {
		title: 'Repeat the test',
		detail: 'The same water again, by your own hands, from the rinse on.',
		isAtBench: true,
		takesTitrant: true
	},
	repeatQuick: {
		title: 'Quick repeat',
		detail: 'Your own way of working once more, done for you.',
		isAtBench: false,
		takesTitrant: true
	},
	largerSample: {
		title: 'Test a larger sample',
		detail: 'Errors of a fixed volume count for less in more water.',
		isAtBench: true,
		takesTitrant: true
	},
	freshLot: {
		title: 'Test with a fresh bottle',
		detail: 'The same water, titrant from another lot.',
		isAtBench: true,
		takesTitrant: true
	},
	freshSample: {
		title: 'Test fresh tank water',
		detail: 'A new sample, taken with care, at another hour.',
		isAtBench: true,
		takesTitrant: true
	},
	secondMethod: {
		title: 'Ask a second method',
		detail: 'Another way of measuring the same water.',
		isAtBench: false,
		takesTitrant: false
	},
	reference: {
		title: 'Test a known solution',
		detail: 'What does your kit read where the answer is on the label?',
		isAtBench: true,
		takesTitrant: true
	},
	salinity: {
		title: 'Measure the salinity',
		detail: 'Everything dissolved moves with it.',
		isAtBench: false,
		takesTitrant: false
	},
	alkalinity: {
		title: 'Test the alkalinity',
		detail: 'Another value of the same tank, by a kit of its own.',
		isAtBench: false,
		takesTitrant: false
	},
	calcium: {
		title: 'Measure calcium anew',
		detail: 'Another test of the same tank, by a kit of its own.',
		isAtBench: false,
		takesTitrant: false
	},
	magnesium: {
		title: 'Measure magnesium anew',
		detail: 'Another test of the same tank, by a kit of its own.',
		isAtBench: false,
		takesTitrant: false
	}
} satisfies Record<PracticeCheckId, Words>;

const allBottles: Words = {
	...wordsOf.freshLot,
	title: 'Test with a fresh set of bottles',
	detail: 'The same water; every bottle of the kit newly opened.'
};

/**
 * The offers of a scenario as lines. Only what a keeper would know goes in: label, note and cost.
 *
 * @param usedMl titrant that the first test took, mL; null when there was none
 */
export function checkLines(offers: readonly CheckOffer[], usedMl: number | null): CheckLine[] {
	return offers.map((offer): CheckLine => {
		const { title, detail, isAtBench, takesTitrant } =
			offer.check === 'freshLot' && offer.opens === 'allBottles'
				? allBottles
				: wordsOf[offer.check];
		const label = 'label' in offer ? offer.label : null;
		const note = 'note' in offer ? offer.note : undefined;
		const ownMl = offer.check === 'freshLot' ? offer.titrantMl : undefined;
		const timesSample = offer.check === 'largerSample' ? 2 : 1;
		return {
			check: offer.check,
			title: label ? `${title}: ${label}` : title,
			detail: note ?? detail,
			minutes: offer.minutes,
			titrantMl: takesTitrant ? (ownMl ?? (usedMl === null ? null : usedMl * timesSample)) : null,
			isAtBench
		};
	});
}

/** What the checks made so far have cost. */
export function costOf(
	lines: readonly CheckLine[],
	made: readonly PracticeCheckId[]
): { minutes: number; titrantMl: number } {
	return made.reduce(
		(sum, check) => {
			const line = lines.find((each) => each.check === check);
			return {
				minutes: sum.minutes + (line?.minutes ?? 0),
				titrantMl: sum.titrantMl + (line?.titrantMl ?? 0)
			};
		},
		{ minutes: 0, titrantMl: 0 }
	);
}
