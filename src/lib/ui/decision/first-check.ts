import type { Decision } from '$lib/judgement';
import type { Catalogue } from '../conversation/catalogue';
import { checksTitle, checkWords } from '../conversation/check-words';

/** What comes before anything else, in words. */
export type FirstCheck = {
	title: string;
	/** How it is done; empty for a question. */
	how: readonly string[];
	because: string | null;
	/** Null where nobody can say. */
	minutes: number | null;
};

const lacking: Record<NonNullable<Decision['lacks']>, Pick<FirstCheck, 'title' | 'how'>> = {
	reading: {
		title: 'Look at the number once more',
		how: [
			'Figure by figure, with its point and its unit, against what you wrote down. If it stands, test the same water again and say what that read.'
		]
	},
	repeat: {
		title: 'Test the same water again',
		how: ['As usual, from the start. A single test slips easily.']
	},
	unit: {
		title: 'Find out the unit',
		how: ['Look at the leaflet or report, and say in the check which unit the reading is in.']
	},
	salinity: {
		title: 'Measure the salinity',
		how: ['With an instrument that was set in water of salinity 35, not in purified water.']
	},
	salinityRight: {
		title: 'Put the salinity right',
		how: [
			'Slowly, by water changes of other salinity or by topping off with less or more. Measure it again with an instrument set in water of 35. Then test this value once more.'
		]
	},
	independent: {
		title: 'Ask something other than the kit',
		how: [
			'Test a known solution with the kit, or the same water by another method: a kit cannot show its own errors.'
		]
	}
};

/** The check that a decision asks for, or what lacks. */
export function firstOf({ check, lacks }: Decision, { cues }: Catalogue): FirstCheck {
	if (check === null) return { ...lacking[lacks ?? 'independent'], because: null, minutes: null };
	const minutes = Math.max(1, Math.round(check.cost.minutes));
	const { because } = check;
	if (check.kind === 'cue') {
		const title = cues.find(({ id }) => id === check.cue)?.question ?? 'Answer a question';
		return { title, how: [], because, minutes };
	}
	const how = check.checks.map((each) => checkWords[each].how);
	return { title: checksTitle(check.checks), how, because, minutes };
}
