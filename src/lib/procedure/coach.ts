import { slipCues } from '../judgement';
import type { Slip } from '../observation';
import { fillingTrapIn, type FillingTrap } from './filling-trap';
import { instructionFor } from './instructions';
import { lastOf } from './event-queries';
import type { CoachingWay } from './run-log';
import type { TitrationRun } from './titration-run';
import { slipsIn } from './slips';
import { stepOf } from './walk-helpers';

export type CoachLine = {
	text: string;
	tone: 'say' | 'warn';
	slip?: Slip;
	/** Numbers for the picture of seal, line and cushion. */
	trap?: FillingTrap;
};

/** What a slip of handling that is already past has to say, if it may be said. */
function warnings(titration: TitrationRun): CoachLine[] {
	const { kit } = titration.bench;
	const step = stepOf(titration.walk.context);
	const slips = slipsIn(kit, titration.steps, titration.events);
	const declared = titration.walk.matches('reading') || titration.walk.status !== 'active';
	return slips
		.filter((slip) => slip.nature === 'handling' || (declared && isOver(titration, slip)))
		.map((slip): CoachLine => {
			const drawn = lastOf(titration.events, 'titrant.drawn');
			const trap = slip.kind === 'mixedMarks' && drawn ? fillingTrapIn(kit, drawn.event) : null;
			if (trap && slip.provisional)
				return {
					tone: 'warn',
					slip,
					trap,
					text:
						step?.kind === 'fill'
							? `The line stands at full, not the seal. Reading the seal would give ${trap.costValue.toFixed(1)} ${trap.unit} too little.`
							: 'Filled by the line: read the line at the end as well.'
				};
			const cue = slipCues[slip.kind];
			return { tone: 'warn', slip, text: `${cue.name}. ${cue.remedy}` };
		});
}

/** A slip of judgement is over once the value is reported; until then a remark would be the answer. */
function isOver(titration: TitrationRun, slip: Slip): boolean {
	return !slip.provisional && titration.walk.matches('valued');
}

/**
 * What the coach says now, most pressing first. It looks at what was done and never at the water:
 * nothing here depends on how near the end is.
 */
export function coachLines(titration: TitrationRun, way: CoachingWay): CoachLine[] {
	if (way === 'silent') return [];
	const step = stepOf(titration.walk.context);
	const said: CoachLine[] = [];
	if (step) {
		const { text, trap } = instructionFor(step, titration.bench.kit);
		if (way === 'prompted') {
			said.push({ tone: 'say', text });
			if (trap) said.push({ tone: 'say', text: trap });
		}
	}
	const latest = warnings(titration).reverse();
	return [...latest, ...said];
}
