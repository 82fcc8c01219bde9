import type { SlipKind } from '../../observation';

/** How a slip shows itself, and what to do about it. */
export type SlipCue = {
	/** Name for a list: what was done, in the past tense, without blame. */
	name: string;
	/** Which way the reading goes: −1 low, +1 high, 0 either. */
	direction: -1 | 0 | 1;
	/** What would have shown it. */
	shownBy: string;
	remedy: string;
	/** Where the knowledge comes from. */
	origin: 'textbook' | 'common practice, no source' | 'judgement';
	/**
	 * How much it usually makes of a value, %, whichever way, where nothing better is known: common
	 * practice, no source.
	 */
	usualPercent: number;
	/** Other words for a variant of the slip. */
	variants?: Record<string, { name: string; remedy: string }>;
};

/** Name and remedy of a slip, in the words of its variant where it has some. */
export function slipWords(slip: { kind: SlipKind; variant?: string }): {
	name: string;
	remedy: string;
} {
	const { name, remedy, variants }: SlipCue = slipCues[slip.kind];
	return variants?.[slip.variant ?? ''] ?? { name, remedy };
}

export const slipCues = {
	wareNotRinsed: {
		name: 'Other water in the sample',
		direction: 0,
		shownBy: 'a repeat with ware rinsed in tank water',
		remedy:
			'Rinse vial and sample syringe with the water you are going to test, and shake them out.',
		origin: 'textbook',
		usualPercent: 3
	},
	sampleOff: {
		name: 'Sample beside its mark',
		direction: 0,
		shownBy: 'weighing ten samples, or a repeat',
		remedy: 'Eye level with the mark, no bubble, and set the same edge on the line each time.',
		origin: 'textbook',
		usualPercent: 3
	},
	indicatorOff: {
		name: 'Other amount of indicator',
		direction: 0,
		shownBy: 'the depth of the first colour beside an earlier test',
		remedy: 'Count drops and spoons aloud. It changes the depth of the colour more than the value.',
		origin: 'textbook',
		usualPercent: 1.5,
		variants: {
			forgotten: {
				name: 'Indicator left out',
				remedy:
					'Without it nothing shows the end. Say each reagent aloud as it goes in, and count it.'
			}
		}
	},
	phReagentOff: {
		name: 'Other amount of base or buffer',
		direction: 0,
		shownBy: 'an end colour that creeps back, and a repeat with the leaflet’s number',
		remedy:
			'Hold the bottle straight down and count aloud. With too little, the end creeps on and the value is high.',
		origin: 'common practice, no source',
		usualPercent: 15
	},
	waitOff: {
		name: 'Another wait than the leaflet asks',
		direction: 0,
		shownBy: 'a clock beside the vial',
		remedy: 'Start the clock when the last drop is swirled in, and let the cloud form.',
		origin: 'common practice, no source',
		usualPercent: 3,
		variants: {
			short: {
				name: 'Went on before the wait was over',
				remedy: 'Start the clock when the last drop is swirled in, and let the cloud form.'
			},
			long: {
				name: 'Stood very long before the first drop',
				remedy:
					'Have the syringe filled before the wait is over: what stands takes up carbon dioxide.'
			}
		}
	},
	tipFittedLate: {
		name: 'Tip put on after filling',
		direction: 1,
		shownBy: 'no drop for the first stretch of travel',
		remedy:
			'Put the tip on first, then fill through it. If it was forgotten: empty and fill again.',
		origin: 'common practice, no source',
		usualPercent: 30
	},
	tipLoose: {
		name: 'Tip not seated',
		direction: -1,
		shownBy: 'drops that fall while nobody pushes',
		remedy: 'Push the tip on with a twist, then watch it for ten seconds.',
		origin: 'common practice, no source',
		usualPercent: 15
	},
	airExpelled: {
		name: 'Air left through the tip',
		direction: 1,
		shownBy: 'a spit instead of a drop',
		remedy:
			'Keep the end under the liquid until the plunger rests. Air above the liquid does no harm.',
		origin: 'common practice, no source',
		usualPercent: 6
	},
	hangingAtStart: {
		name: 'A drop hung at the tip from the bottle',
		direction: -1,
		shownBy: 'a look at the tip before the first drop',
		remedy: 'Wipe the tip on the bottle’s rim or a tissue before you begin.',
		origin: 'textbook',
		usualPercent: 4
	},
	mixedMarks: {
		name: 'Filled by one mark, read by the other',
		direction: 0,
		shownBy: 'the gap between seal and line, and counting the drops',
		remedy: 'Use one edge both times: best the seal. Its travel is the liquid that left.',
		origin: 'common practice, no source',
		usualPercent: 30,
		variants: {
			besideFull: {
				name: 'Filled beside the full mark',
				remedy: 'Set it on the full mark, or count from where it stood.'
			},
			refilledByLine: {
				name: 'Filled again by the line, counted by the seal',
				remedy:
					'The same edge at every filling. Write down where it stood before and where it stands after.'
			},
			refilledBeside: {
				name: 'Filled again beside the full mark',
				remedy:
					'Set it on the full mark at every filling, as at the first, or count that filling from where it stood.'
			}
		}
	},
	wrongRim: {
		name: 'Other rim of the seal',
		direction: 0,
		shownBy: 'reading it again from the edge that touches the liquid side',
		remedy: 'Always the rim nearest the tip, at filling and at reading.',
		origin: 'common practice, no source',
		usualPercent: 8
	},
	dropperTilted: {
		name: 'Bottle held at a slant',
		direction: 1,
		shownBy: 'weighing twenty drops, upright and slanted',
		remedy: 'Hold it straight down: slanted drops are smaller, so more of them are counted.',
		origin: 'textbook',
		usualPercent: 10
	},
	dropperSqueezed: {
		name: 'Bottle squeezed hard',
		direction: -1,
		shownBy: 'weighing twenty drops, slow and fast',
		remedy: 'Press gently and let each drop fall by itself; wipe a wet nozzle.',
		origin: 'textbook',
		usualPercent: 7
	},
	stoppedAtFlash: {
		name: 'Stopped at a colour that had not stayed',
		direction: -1,
		shownBy: 'swirling, and waiting half a minute',
		remedy:
			'Swirl after each drop. The end is the first end colour that is still there after the leaflet’s time; one in between, like purple, is not.',
		origin: 'textbook',
		usualPercent: 10,
		variants: {
			notWaited: {
				name: 'The end was declared before it had stood its time',
				remedy:
					'Swirl, then wait the leaflet’s time before you call it the end. A flash looks the same at first.'
			}
		}
	},
	overshot: {
		name: 'More than one drop at the end',
		direction: 1,
		shownBy: 'a repeat with single drops near the end',
		remedy:
			'Slow down at the end: one drop at a time, swirled in, as soon as a flash takes three seconds to fade or the colour begins to change.',
		origin: 'textbook',
		usualPercent: 4,
		variants: {
			hurried: {
				name: 'Drops came faster than the dye could follow',
				remedy:
					'Slow down: one drop, swirl, wait some seconds and look, then the next. The colder the water, the longer the dye takes.'
			}
		}
	},
	chasedColour: {
		name: 'Followed the colour as it faded again',
		direction: 1,
		shownBy: 'the same end, watched without adding',
		remedy: 'Take the first colour that lasts. Later it fades because carbon dioxide leaves.',
		origin: 'textbook',
		usualPercent: 3
	},
	swirledOddly: {
		name: 'Swirled far less, or far more, than usual',
		direction: 0,
		shownBy: 'two tests, one swirled gently and one hard',
		remedy: 'The same gentle swirl of about two seconds after every drop near the end.',
		origin: 'textbook',
		usualPercent: 2
	},
	wrongLight: {
		name: 'Judged in coloured or poor light',
		direction: 0,
		shownBy: 'carrying the vial to a white lamp and a white card',
		remedy: 'White light and a white card first, away from the tank’s own lamps.',
		origin: 'common practice, no source',
		usualPercent: 8
	},
	hangingAtEnd: {
		name: 'A drop left hanging at the end',
		direction: 1,
		shownBy: 'a look at the tip before reading',
		remedy: 'Touch the tip to the glass, swirl, look again; then read.',
		origin: 'textbook',
		usualPercent: 4
	},
	dropsMiscounted: {
		name: 'Drops counted wrong',
		direction: 0,
		shownBy: 'a tally, or the travel of the seal',
		remedy: 'Count aloud, or make a stroke for every five.',
		origin: 'common practice, no source',
		usualPercent: 6
	},
	misread: {
		name: 'Mark misread',
		direction: 0,
		shownBy: 'a photo, or a second pair of eyes',
		remedy: 'Find the numeral first, then count the short lines from it. Say it aloud.',
		origin: 'common practice, no source',
		usualPercent: 10
	},
	parallax: {
		name: 'Eye above or below the mark',
		direction: 0,
		shownBy: 'rings that look like ellipses instead of lines',
		remedy: 'Bring the eye level until the rim of the seal is a single line.',
		origin: 'textbook',
		usualPercent: 1
	},
	scaleReversed: {
		name: 'Scale read from the other end',
		direction: 0,
		shownBy: 'counting the drops: 20 drops are about 0.4 mL used',
		remedy: 'Say “used” or “left” when you write the number down.',
		origin: 'common practice, no source',
		usualPercent: 30
	},
	refillForgotten: {
		name: 'A filling left out of the count',
		direction: 0,
		shownBy: 'the drops counted, and a value lower by what one filling is worth',
		remedy:
			'Write down each filling as you make it: from where to where. Add them up before you use the leaflet.',
		origin: 'common practice, no source',
		usualPercent: 50
	},
	wrongRow: {
		name: 'Value not the leaflet’s for this mark',
		direction: 0,
		shownBy: 'looking it up once more',
		remedy:
			'Work the value out again: by the two rows around the mark, or by what each mL is worth, for the sample you took.',
		origin: 'common practice, no source',
		usualPercent: 50
	}
} satisfies Record<SlipKind, SlipCue>;
