import { titrantOf, type Kit, type Step, type StepKind } from '../kits';
import { sampleVolumeOf } from './counted-mark';
import { spoken } from './spoken-words';
import type { TankTitration } from './tank-test';
import { reagentCaution, titrantWordsOf } from './tank-titrant-words';
import { stepOf } from './walk-helpers';

/** What a step beside the tank asks, with its place among all. */
export type TankInstruction = {
	step: Step;
	/** Its number, from 1, of so many. */
	n: number;
	of: number;
	/** At most fourteen words. */
	text: string;
	/** The trap in it, in one line; null where there is none, or it was heard before. */
	trap: string | null;
	/** Said in fewer words, since the same hands or others have just been through it. */
	isRepeat: boolean;
	/** Said aloud with the text: about eyes, skin and lungs. */
	caution: string | null;
};

/** What the words rest on: the leaflet, and the sample in use. */
type About = { kit: Kit; sampleVolumeMl: number; titration: TankTitration };
type Words = {
	text: string;
	short: string;
	trap: string | null;
	/** What is said aloud as well, since it is about eyes and lungs. */
	caution?: string | null;
};
type Sayers = { [Kind in StepKind]: (step: Extract<Step, { kind: Kind }>, about: About) => Words };

/** A name from a leaflet, cut where it would not fit a line any more. */
function fitted(name: string, words: number): string {
	const all = name.trim().split(/\s+/);
	return all.length <= words ? all.join(' ') : `${all.slice(0, words).join(' ')}…`;
}

function doseWords({ amount, unit }: Extract<Step, { kind: 'dose' }>): string {
	if (unit === 'mL') return `${amount} mL`;
	const name = unit === 'spoon' ? 'level spoon' : unit;
	if (unit === 'spoon' && amount === 1) return `one ${name}`;
	return `${amount} ${name}${amount === 1 ? '' : 's'}`;
}

const doseTraps = {
	drop: 'Bottle straight down, and count aloud; nobody else does.',
	spoon: 'Strike it level, and tap it empty over the vial.',
	mL: 'Eye level with the mark, and no bubble.'
};

/** The same beside a caution, which goes first. */
const shortDoseTraps = {
	drop: 'Straight down; count aloud.',
	spoon: 'Strike it level.',
	mL: 'Eye level, no bubble.'
};

/** Where 0 stands on this scale, so that nobody reads it from the other end. */
function zeroWords({ delivery }: Kit): string {
	if (delivery.by !== 'syringe') return '0 is at the top.';
	return delivery.scale === 'down' ? '0 is at the tip.' : '0 is at the far end.';
}

/** Is this the last thing done to the sample before the drops begin? Then its colour can be told. */
function isLastBeforeDrops({ titration }: About, step: Step): boolean {
	const prepares = titration.steps.filter(({ kind }) => ['dose', 'mix', 'wait'].includes(kind));
	return prepares.at(-1)?.id === step.id;
}

const colourTrap = (about: About, step: Step, otherwise: string | null) =>
	isLastBeforeDrops(about, step)
		? `Now it should be ${fitted(about.kit.endPoint.startColour, 8)}.`
		: otherwise;

/** A base turns magnesium into a fine cloud before calcium is titrated. */
const isOfBase = ({ kit }: About, reagentId: string | undefined) =>
	titrantOf[kit.analyte].kind === 'edta' &&
	kit.reagents.some(({ id, role }) => id === reagentId && role === 'base');

const sayers: Sayers = {
	choose: () => ({
		text: 'Choose how much water to test.',
		short: 'Same amount of water as before?',
		trap: 'More water makes each drop count for less, and uses more titrant.'
	}),
	rinse: ({ ware }) => {
		const name = ware === 'vial' ? 'the vial' : 'the sample syringe';
		return {
			text: `Rinse ${name} with the water you test, and shake it out.`,
			short: `Rinse ${name}.`,
			trap: 'Other water left inside thins the sample.'
		};
	},
	measure: ({ measuredIn }, { sampleVolumeMl }) =>
		measuredIn === 'syringe'
			? {
					text: `Draw ${sampleVolumeMl} mL of the water and empty it into the vial.`,
					short: `${sampleVolumeMl} mL of water into the vial.`,
					trap: 'A bubble takes the place of water: tap it up and push it out.'
				}
			: {
					text: `Fill the vial with the water to its ${sampleVolumeMl} mL line.`,
					short: `Water to the ${sampleVolumeMl} mL line.`,
					trap: 'Eye level; the bottom of the curve stands on the line.'
				},
	dose: (step, about) => {
		const reagent = about.kit.reagents.find(({ id }) => id === step.reagentId);
		const name = fitted(reagent?.name ?? step.reagentId, 6);
		const caution = reagent ? reagentCaution(reagent) : null;
		return {
			text: `Add ${doseWords(step)} of ${name} to the vial.`,
			short: `${doseWords(step)} of ${name}.`,
			trap: caution === null ? doseTraps[step.unit] : `${caution} ${shortDoseTraps[step.unit]}`,
			caution
		};
	},
	mix: (step, about) => ({
		text: `Swirl gently for ${step.seconds} seconds.`,
		short: `Swirl ${step.seconds} s.`,
		trap: colourTrap(about, step, null)
	}),
	wait: (step, about) => ({
		text: `Let it stand for ${step.seconds} seconds.`,
		short: `Wait ${step.seconds} s.`,
		trap: colourTrap(
			about,
			step,
			isOfBase(about, step.reagentId)
				? 'A fine cloud may form: that is the magnesium, and right.'
				: 'The next step counts on it being done.'
		)
	}),
	fill: ({ by, toMl }) =>
		by === 'syringe'
			? {
					text: `Tip on first. Fill until the seal stands at ${toMl.toFixed(2)}, then wipe.`,
					short: `Tip on, seal at ${toMl.toFixed(2)}, wipe.`,
					trap: 'Air between seal and liquid is right. No air in the tip.'
				}
			: {
					text: 'Fill the burette to 0; no air in its tip, and wipe it.',
					short: 'Burette to 0, no air, wipe.',
					trap: 'Air in the tip leaves later and counts as titrant.'
				},
	titrate: ({ by, holdsSeconds }, { kit }) => {
		const colour = fitted(kit.endPoint.endColour, 4);
		const text = {
			syringe: `Add drops, swirl each, until ${colour} stays ${holdsSeconds} seconds.`,
			dropper: `Count drops, swirl each, until ${colour} stays ${holdsSeconds} seconds.`,
			burette: `Run in drops, swirl each, until ${colour} stays ${holdsSeconds} seconds.`
		}[by];
		return {
			text,
			short: `Drops until ${colour} stays ${holdsSeconds} s.`,
			trap: titrantWordsOf(kit).dropping
		};
	},
	read: ({ what }, { kit }) =>
		({
			mark: {
				text: 'Where does the seal stand now? Give the line as well.',
				short: 'Where do seal and line stand?',
				trap: `Eye level, the rim nearest the tip. ${zeroWords(kit)}`
			},
			drops: {
				text: 'How many drops did it take?',
				short: 'How many drops?',
				trap: 'Count those that turned it, too.'
			},
			level: {
				text: 'Where does the level stand in the burette?',
				short: 'Where does the level stand?',
				trap: `Eye level with the bottom of the curve. ${zeroWords(kit)}`
			}
		})[what]
};

/**
 * Plain words for the step that a titration beside the tank stands at: what the hands do, in the
 * kit's own names, amounts and colours. Null when its walk is over.
 */
export function tankInstruction(titration: TankTitration): TankInstruction | null {
	const { kit, steps, events, walk, purpose } = titration;
	const step = stepOf(walk.context);
	if (!step || walk.status !== 'active') return null;
	const say = sayers[step.kind] as (each: Step, about: About) => Words;
	const words = say(step, { kit, sampleVolumeMl: sampleVolumeOf(kit, events), titration });
	const isRepeat = purpose === 'repeat' || purpose === 'otherPerson';
	return {
		step,
		n: walk.context.stepIndex + 1,
		of: steps.length,
		text: isRepeat ? words.short : words.text,
		trap: isRepeat ? null : words.trap,
		isRepeat,
		caution: isRepeat ? null : (words.caution ?? null)
	};
}

/** The same to be read aloud: units as words, no symbols. Null when the walk is over. */
export function spokenInstruction(titration: TankTitration): string | null {
	const instruction = tankInstruction(titration);
	if (!instruction) return null;
	const { text, caution } = instruction;
	return spoken(caution === null ? text : `${text} ${caution}`);
}
