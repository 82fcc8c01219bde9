import { factsOf } from '$lib/bench';
import { liveEntries, type Slip } from '$lib/observation';
import { startRun, stepRun, type RunEvent, type RunLog, type RunState } from '$lib/procedure';
import { eventWords } from './entry-words';

/** One moment of the replay. */
export type ReplayLine = {
	id: string;
	/** ms since the run began. */
	at: number;
	titration: number;
	words: string;
	/** Names of slips that show here. */
	slips: string[];
	/** The run as it stood then. */
	run: RunState;
};

/** Moves that come in many small steps; only the last of a series is worth a line. */
function seriesOf(event: RunEvent): string | null {
	if (event.in !== 'bench') return null;
	const { type } = event.action;
	return ['eye.move', 'titrant.draw', 'titrant.purge', 'sample.draw', 'dropper.tilt'].includes(type)
		? `${event.titration} ${type}`
		: null;
}

/** Drops that fell since the moment before, as words; empty when none did. */
function fell(before: RunState, after: RunState, titration: number): string {
	const of = (run: RunState) => run.titrations.find((each) => each.number === titration);
	const [was, is] = [of(before), of(after)];
	if (!was || !is) return '';
	const drops = factsOf(is.bench).landed.length - factsOf(was.bench).landed.length;
	return drops > 0 ? `. ${drops} ${drops === 1 ? 'drop' : 'drops'} fell` : '';
}

/**
 * The run as lines in order, each with the run as it stood: what was taken back is left out, small
 * steps of one move are one line.
 *
 * @param slips found in the first titration, with their names
 */
export function replayLines(
	log: RunLog,
	scenario: RunState['scenario'],
	slips: readonly { slip: Slip; name: string }[]
): ReplayLine[] {
	const lines: ReplayLine[] = [];
	let run = startRun(log, scenario);
	let series: string | null = null;
	for (const entry of liveEntries(log.entries)) {
		const before = run;
		run = stepRun(run, entry);
		if (run.refused) break;
		const titration = entry.event.in === 'inquiry' ? 0 : entry.event.titration;
		const own = seriesOf(entry.event);
		const named = slips
			.filter(({ slip }) => slip.entryId === entry.id || slip.entryId.startsWith(`${entry.id}.`))
			.map(({ name }) => name);
		const last = lines[lines.length - 1];
		const line = {
			id: entry.id,
			at: entry.at,
			titration,
			words: eventWords(entry.event, log.kit) + fell(before, run, titration),
			slips: named,
			run
		};
		if (own !== null && own === series && last) {
			lines[lines.length - 1] = { ...line, slips: [...last.slips, ...named] };
		} else lines.push(line);
		series = own;
	}
	return lines;
}

/** Time since the run began: '3:07'. */
export function clockWords(ms: number): string {
	const seconds = Math.floor(ms / 1000);
	return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
