import { slipWords } from '../judgement';
import type { StepKind } from '../kits';
import type { Slip, SlipKind } from '../observation';
import { sampleVolumeOf } from './counted-mark';
import { startsIn } from './event-queries';
import { fillingTrapIn, type FillingTrap } from './filling-trap';
import { instructionFor } from './instructions';
import type { CoachingWay } from './run-log';
import { slipsIn } from './slips';
import type { TitrationRun } from './titration-run';
import { stepOf } from './walk-helpers';

export type CoachLine = {
	text: string;
	tone: 'say' | 'warn';
	/** Nothing more comes of what the hand is doing: this goes before whatever was noted earlier. */
	isStop?: true;
	slip?: Slip;
	/** What to draw beside it: seal, line and the air between them, from the numbers in `trap`. */
	picture?: 'cushion';
	trap?: FillingTrap;
};

/** Slips of judgement are about the reading when here, about the end of the drops otherwise. */
const aboutTheReading: ReadonlySet<SlipKind> = new Set([
	'wrongRim',
	'dropsMiscounted',
	'misread',
	'parallax',
	'scaleReversed',
	'refillForgotten',
	'wrongRow'
]);

/**
 * May a slip be spoken of yet? One of handling at once; one of judgement when the step in which the
 * person declared the thing is over, or the remark would be the answer.
 */
function maySay({ walk, steps }: TitrationRun, slip: Slip): boolean {
	if (slip.nature === 'handling') return true;
	const kind: StepKind = aboutTheReading.has(slip.kind) ? 'read' : 'titrate';
	const place = steps.findIndex((step) => step.kind === kind);
	return place >= 0 && walk.context.stepIndex > place;
}

/**
 * A remark belongs to the step in which the slip was made and to the next; after that it waits for
 * the debrief. What can still be put right is never old.
 */
function isFresh(titration: TitrationRun, slip: Slip): boolean {
	const ends = titration.events.flatMap(({ event }, i) =>
		event.type === 'step.done' || event.type === 'step.skipped' ? [i] : []
	);
	const since = ends.at(-2) ?? -1;
	return slip.provisional || placeOf(titration, slip) > since;
}

const placeOf = ({ events }: TitrationRun, slip: Slip) =>
	events.findIndex(({ id }) => id === slip.entryId);

/** What slips have to say now, the latest first. */
function warnings(titration: TitrationRun): CoachLine[] {
	const { kit } = titration.bench;
	return slipsIn(kit, titration.steps, titration.events)
		.filter((slip) => maySay(titration, slip) && isFresh(titration, slip))
		.sort((a, b) => placeOf(titration, b) - placeOf(titration, a))
		.map((slip) => trapLine(titration, slip) ?? slipLine(slip));
}

function slipLine(slip: Slip): CoachLine {
	const { name, remedy } = slipWords(slip);
	return { tone: 'warn', slip, text: `${name}. ${remedy}` };
}

/** The filling trap while it is only set, with its picture and its cost. */
function trapLine({ bench, events, walk }: TitrationRun, slip: Slip): CoachLine | null {
	if (slip.kind !== 'mixedMarks' || !slip.provisional) return null;
	const start = startsIn(events).find(({ drawn }) => drawn.id === slip.entryId);
	const { kit } = bench;
	const trap = start && fillingTrapIn(kit, start.drawn.event, sampleVolumeOf(kit, events));
	if (!trap) return null;
	const isFilling = stepOf(walk.context)?.kind === 'fill';
	const cost = `${trap.costValue.toFixed(1)} ${trap.unit}`;
	return {
		tone: 'warn',
		slip,
		trap,
		picture: 'cushion',
		text: isFilling
			? `The line stands at full, not the seal. Read by the seal it would say ${cost} too little.`
			: 'Filled by the line: read the line at the end as well.'
	};
}

/** That nothing more can come is plain to any eye at the barrel, so it is said in every way of coaching. */
function emptyLine({ events, walk }: TitrationRun): CoachLine[] {
	const last = events.findLast(
		({ event }) => event.type === 'titrant.spent' || event.type === 'titrant.drawn'
	);
	return last?.event.type === 'titrant.spent' && walk.matches('titrating')
		? [{ tone: 'say', isStop: true, text: 'It is empty. Fill it again and go on, or stop here.' }]
		: [];
}

/**
 * What the coach says now, most pressing first. It looks at what was done and never at the water:
 * nothing here depends on how near the end is.
 */
export function coachLines(titration: TitrationRun, way: CoachingWay): CoachLine[] {
	const empty = emptyLine(titration);
	if (way === 'silent') return empty;
	const step = stepOf(titration.walk.context);
	const kit = titration.bench.kit;
	const said: CoachLine[] = [];
	if (step && way === 'prompted') {
		const { text, trap } = instructionFor(step, kit, sampleVolumeOf(kit, titration.events));
		said.push({ tone: 'say', text });
		if (trap) said.push({ tone: 'say', text: trap });
	}
	return [...empty, ...warnings(titration), ...said];
}
