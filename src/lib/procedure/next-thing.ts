import type { Ledger, LedgerLine, WorldFault } from '../bench';
import { slipCues } from '../judgement';
import { titrantOf, type Kit } from '../kits';
import { methodFiguresOf } from '../metrology';
import type { SlipKind } from '../observation';
import type { SlipNote } from './debrief';
import type { ToTrain } from './drill-for';

/** The one thing to do after a run. */
export type NextThing = {
	text: string;
	/** What a drill should train; null where no drill helps. */
	train: ToTrain | null;
	/** The slip that is to be mended by it, where it is one. */
	slipKind: SlipKind | null;
};

/** A line of the ledger below this share of what the kit claims is not worth a word: judgement. */
const MATTERS_SHARE = 0.375;
/** A kit's own lack of truth in ordinary water stays well below this share of its claim. */
const METHOD_MATTERS_SHARE = 0.75;

/** What the leaflet claims of a value; where it is silent, what a drop is worth. */
function claimOf(kit: Kit): number {
	if (kit.statedAccuracy !== undefined) return kit.statedAccuracy;
	const { valuePerMl, dropMl } = methodFiguresOf(kit);
	return valuePerMl * dropMl;
}

const advice = (text: string): NextThing => ({ text, train: null, slipKind: null });

/** For a stop away from the end for which no slip is to be seen: what would help the eye. */
const stopTexts = {
	late: 'The colour had turned some drops before. A comparison vial, or the red lamp, shows it sooner.',
	early: 'The colour had not come all the way. A comparison vial shows where it is going.'
};
/** Eyes that were late learn the same as eyes that were early: to tell the end from what comes before it. */
const trainsEyes: SlipKind = 'stoppedAtFlash';

const wouldShow = 'A check against a known solution finds such a thing.';
/** What no known solution would show: it came with the water. */
const cameWithWater: Partial<Record<WorldFault, string>> = {
	grains: 'It came with the sample. Let the grains settle, or take water away from the sand.',
	blockedDye: 'It came with the water. Another method tells the value; another try does not.'
};

function adviceFor(line: LedgerLine, kit: Kit, notes: readonly SlipNote[], isMixed: boolean) {
	const { kind: titration } = titrantOf[kit.analyte];
	if (line.kind === 'slip') {
		const { kind } = line.slip;
		const remedy = notes.find(({ slip }) => slip.kind === kind)?.remedy ?? slipCues[kind].remedy;
		return { text: remedy, train: { slip: kind, titration }, slipKind: kind };
	}
	if (line.kind === 'eye')
		return {
			text: stopTexts[line.stop],
			train: { slip: trainsEyes, titration },
			slipKind: null
		};
	if (line.kind === 'world') {
		const hands = isMixed ? 'Most of this was not your hands.' : 'Your hands did not do this.';
		return advice(`${hands} ${cameWithWater[line.id] ?? wouldShow}`);
	}
	return advice(
		line.kind === 'method'
			? 'Your hands were fine. This water is not what the leaflet was made for.'
			: 'Part of this could not be named. A careful repeat shows whether it comes again.'
	);
}

/** The largest line that is worth a word leads, whosever it is. */
function byLedger(kit: Kit, { lines }: Ledger, notes: readonly SlipNote[]): NextThing {
	const claim = claimOf(kit);
	const leastOf = ({ kind }: LedgerLine) =>
		(kind === 'method' ? METHOD_MATTERS_SHARE : MATTERS_SHARE) * claim;
	const worthy = lines
		.filter((line) => line.kind !== 'resolution' && Math.abs(line.amount) >= leastOf(line))
		.sort((a, b) => Math.abs(b.amount) - Math.abs(a.amount));
	const [largest] = worthy;
	if (!largest) return advice('Only scatter. Nothing to mend. Try it at the tank.');
	const isMixed = worthy.some(({ kind }) => kind === 'slip' || kind === 'eye');
	return adviceFor(largest, kit, notes, isMixed);
}

/**
 * Without a value: first what moved the end most, as far as glass and chemistry tell; where they do not,
 * what such a slip usually makes of a value in the middle of the scale.
 */
function bySize(kit: Kit, notes: readonly SlipNote[]): SlipNote | undefined {
	const { delivery } = kit;
	const middleMl = delivery.by === 'dropper' ? 10 * delivery.dropMl : delivery.capacityMl / 2;
	const usual = ({ slip }: SlipNote) => slipCues[slip.kind].usualPercent;
	const sizeMl = (note: SlipNote) =>
		note.endMovedMl === null ? (usual(note) / 100) * middleMl : Math.abs(note.endMovedMl);
	return [...notes].sort((a, b) =>
		sizeMl(a) === sizeMl(b) ? usual(b) - usual(a) : sizeMl(b) - sizeMl(a)
	)[0];
}

/** What to do next after a run, from its ledger, or, where it came to no value, from its slips. */
export function nextThing(
	kit: Kit,
	ledger: Ledger | null,
	notes: readonly SlipNote[],
	isCase: boolean
): NextThing {
	if (ledger) return byLedger(kit, ledger, notes);
	const worst = bySize(kit, notes);
	if (worst) {
		const { kind } = worst.slip;
		const { kind: titration } = titrantOf[kit.analyte];
		return { text: worst.remedy, train: { slip: kind, titration }, slipKind: kind };
	}
	return advice(
		isCase
			? 'Make the test yourself as well: your own careful repeat tells most for its cost.'
			: 'No slip was seen. Try the same within a whole run.'
	);
}
