import type { CheckId } from '$lib/observation';
import { midSentence } from './catalogue';
import type { FormId } from './forms/forms';

/** A way of checking, as somebody at the tank would be told of it. */
export type CheckWords = {
	title: string;
	/** What to do, in one or two sentences. */
	how: string;
	/** The sentence in which its outcome is told. */
	form: FormId;
	/** Titrant over that of the test in question; 0 where none is used. */
	timesTitrant: number;
};

const again = 'Without looking at the first number, from the rinse on.';

export const checkWords = {
	repeatFull: {
		title: 'Repeat the test',
		how: `The same water once more. ${again}`,
		form: 'repeat',
		timesTitrant: 1
	},
	repeatQuick: {
		title: 'Repeat the test quickly',
		how: 'The same water once more, as you always do it.',
		form: 'repeat',
		timesTitrant: 1
	},
	secondMethod: {
		title: 'Ask a second method',
		how: 'Another kit, a photometer or a laboratory, on the same water and the same day. It shares nothing with your hands and bottles.',
		form: 'secondMethod',
		timesTitrant: 0
	},
	reference: {
		title: 'Test a known solution',
		how: 'What does your kit read where the content is known? Test it as you tested the tank.',
		form: 'reference',
		timesTitrant: 1
	},
	largerSample: {
		title: 'Test twice the water',
		how: 'Twice the sample and the same drops of indicator. A fixed slip, such as a drop or the air in the tip, then counts half.',
		form: 'otherSample',
		timesTitrant: 2
	},
	smallerSample: {
		title: 'Test half the water',
		how: 'Half the sample and the same drops of indicator. A fixed slip then counts double.',
		form: 'otherSample',
		timesTitrant: 0.5
	},
	freshLot: {
		title: 'Test with a fresh bottle',
		how: 'The same water, with everything that comes in bottles of another lot: the titrant, and indicator, base or buffer as well.',
		form: 'freshLot',
		timesTitrant: 1
	},
	freshSample: {
		title: 'Test fresh tank water',
		how: 'Taken anew, an hour or more after dosing, away from the outlet, without sand.',
		form: 'freshSample',
		timesTitrant: 1
	},
	standardAddition: {
		title: 'Add a known amount and test',
		how: 'How much of an addition does your kit find again? It sees faults that are a share of the value.',
		form: 'addition',
		timesTitrant: 1.5
	},
	blank: {
		title: 'Test water that holds nothing',
		how: 'Purified water, or salt in purified water. What your kit finds in it, it finds in every test.',
		form: 'blank',
		timesTitrant: 0.1
	},
	weighSampleWare: {
		title: 'Weigh a sample of water',
		how: 'Measure purified water as you measure the sample, and give it onto a scale: a millilitre weighs a gram, a little less when warm.',
		form: 'weighing',
		timesTitrant: 0
	},
	weighTitrantWare: {
		title: 'Weigh what the titrant’s syringe or dropper gives',
		how: 'Give purified water from it onto a scale, tip and all, and compare with the mark.',
		form: 'weighing',
		timesTitrant: 0
	},
	otherHands: {
		title: 'Let somebody else test',
		how: 'The same water and kit in other hands, without your number in sight.',
		form: 'otherHands',
		timesTitrant: 1
	},
	probeTitration: {
		title: 'Titrate with a pH probe',
		how: 'Volumes and pH instead of a colour: no eye decides where the end is.',
		form: 'secondMethod',
		timesTitrant: 1.5
	},
	referenceBySecondMethod: {
		title: 'Give the known solution to the second method',
		how: 'If the second method reads it right, the second method can be believed on your water too.',
		form: 'reference',
		timesTitrant: 0
	},
	moreBase: {
		title: 'Test with more base',
		how: 'A second vial of the same water, with half as many drops of base again. It shows whether there was too little.',
		form: 'otherWay',
		timesTitrant: 1
	},
	thinnedSample: {
		title: 'Test a thinned sample',
		how: 'The same sample, and as much purified water beside it. Reckon the value as always.',
		form: 'otherWay',
		timesTitrant: 1
	},
	warmSlow: {
		title: 'Test warm and slowly',
		how: 'The sample at room temperature, and some seconds of swirling between the last drops.',
		form: 'otherWay',
		timesTitrant: 1
	},
	takenOffAnew: {
		title: 'Measure anew what was taken off',
		how: 'Measure calcium in the same water, take that off, and write down what is left.',
		form: 'otherWay',
		timesTitrant: 0
	}
} satisfies Record<CheckId, CheckWords>;

/** Two checks as one title. */
export function checksTitle(checks: readonly CheckId[]): string {
	const titles = checks.map((check) => checkWords[check].title);
	if (new Set(titles).size < titles.length) return `${titles[0]} twice`;
	return titles.map((title, i) => (i === 0 ? title : midSentence(title))).join(', and ');
}

/**
 * Titrant that checks will take, mL.
 *
 * @param usedMl titrant that the test in question took; null where nobody knows
 * @returns null where nobody knows, 0 where none is used
 */
export function titrantMlOf(checks: readonly CheckId[], usedMl: number | null): number | null {
	const times = checks.reduce((sum, check) => sum + checkWords[check].timesTitrant, 0);
	if (times === 0) return 0;
	return usedMl === null ? null : usedMl * times;
}
