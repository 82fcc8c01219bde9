import { houseSyringeKit, type Kit, type Unit } from '$lib/kits';
import type { CheckRanking, Cue, Decision, Diagnosis, Fault } from '$lib/judgement';
import type { CheckEvent, Evidence, LivestockLook, Means, Reading, Tank } from '$lib/observation';
import { replayCheck, withEvent, withUndo, type CheckLog } from '$lib/procedure';
import type { CheckRun, WithoutPiece } from '../../../src/lib/ui/conversation/run';

/** Each check has drafts of its own. */
let made = 0;

/** A check in memory for the screens: the log and its replay are real, what is believed is handed in. */
export class MadeRun implements CheckRun {
	log: CheckLog = $state.raw({
		format: 1,
		id: `made-${made++}`,
		startedAtEpochMs: 1_000,
		analyte: 'alkalinity',
		kit: houseSyringeKit,
		kitVersion: 0,
		entries: []
	});
	storage: CheckRun['storage'] = $state('kept');
	unit: Unit = $state('dKH');
	diagnosis: Diagnosis | null = $state.raw(null);
	ranking: CheckRanking | null = $state.raw(null);
	without: readonly WithoutPiece[] | null = $state.raw([]);
	isThinking = $state(false);
	trouble: string | null = $state(null);
	decision: Decision | null = null;
	plan = null;
	usedMl: number | null = 0.5;
	#next = 0;

	readonly state = $derived.by(() => replayCheck(this.log));

	get kit(): Kit | null {
		return this.log.kit;
	}
	now(): number {
		return 5_000 + this.#next;
	}
	#say(event: CheckEvent): boolean {
		const before = this.state;
		const entry = { id: `e${this.#next++}`, at: this.now(), event };
		const log = withEvent(this.log, entry);
		if (replayCheck(log).keptAside.length > before.keptAside.length) return false;
		this.log = log;
		return true;
	}
	give(evidence: Evidence, testId?: string): boolean {
		return this.#say({
			type: 'evidence.given',
			evidence,
			...(testId === undefined ? {} : { testId })
		});
	}
	takeBack(entryId: string): void {
		this.log = withUndo(this.log, { id: `u${this.#next++}`, at: this.now(), undoes: entryId });
	}
	leaveOut(ids: readonly string[]): void {
		this.#say({ type: 'checks.leftOut', ids: [...this.state.leftOut, ...ids] });
	}
	putBack(): void {
		this.#say({ type: 'checks.leftOut', ids: [] });
	}
	doubtUnit(isDoubted: boolean): void {
		this.#say({ type: 'unit.doubted', isDoubted });
	}
	describeTank(tank: Tank): void {
		this.#say({ type: 'tank.described', tank });
	}
	seeLivestock(look: LivestockLook): void {
		this.#say({ type: 'livestock.seen', look });
	}
	seeEmergency(isSeen: boolean): void {
		this.#say({ type: 'emergency.seen', isSeen });
	}
	chooseMeans(means: Means | null): void {
		this.#say({ type: 'means.chosen', means });
	}
	writeNote(text: string): void {
		this.#say({ type: 'note.written', text });
	}
	close(): void {
		this.#say({ type: 'check.closed' });
	}
	get canUndo(): boolean {
		return this.log.entries.length > 0;
	}
	undo(): void {
		const last = this.log.entries.at(-1);
		if (last) this.takeBack(last.id);
	}
}

export const firstReading: Reading = {
	id: 'first',
	label: 'Your first test',
	value: 7.4,
	expandedUncertainty: 0.6,
	repeatabilitySd: 0.15,
	unit: 'dKH'
};

export const firstTest: Evidence = { kind: 'test', from: 'first', reading: firstReading };

const fault = (id: string, name: string): Fault => ({
	id,
	name,
	class: 'reagent',
	target: 'gain',
	scope: 'lot',
	analytes: ['alkalinity'],
	sizes: [{ weight: 1, mean: -0.06, sd: 0.02, of: 'share' }],
	prior: 0.05,
	remedy: 'A fresh bottle.',
	shownBy: ['freshLot'],
	origin: 'made up for a test'
});

export const catalogue = {
	faults: [
		fault('strong', 'titrant grown stronger'),
		fault('large', 'sample over its mark'),
		fault('hanging', 'a drop left hanging'),
		fault('parallax', 'eye above the mark'),
		fault('pale', 'indicator grown pale'),
		fault('light', 'end judged in dim light')
	],
	cues: [
		{
			id: 'bottle',
			question: 'How is it with the bottle of titrant?',
			because: 'Water leaves an old bottle and acid stays.',
			answers: [
				{ id: 'new', words: 'New and full' },
				{ id: 'old', words: 'Old and low, with a crust' },
				{ id: 'unknown', words: 'I don’t know' }
			],
			likelihoods: { otherwise: { new: 0.5, old: 0.3, unknown: 0.2 }, byFault: {} },
			seconds: 10,
			origin: 'made up for a test'
		} satisfies Cue
	]
};

const told = (id: string, probability: number, mean: number, standardUncertainty = 0.15) => ({
	id,
	faults: id === 'none' || id === 'noneOfThese' ? [] : id.split('+'),
	probability,
	trueValue: { mean, standardUncertainty }
});

/** Two normal humps, as a diagnosis would draw them. */
function densityOf(
	humps: readonly { weight: number; mean: number; standardUncertainty: number }[]
) {
	return Array.from({ length: 121 }, (_, i) => {
		const value = 6 + i * 0.03;
		const density = humps.reduce(
			(sum, { weight, mean, standardUncertainty: u }) =>
				sum + (weight * Math.exp(-0.5 * ((value - mean) / u) ** 2)) / (u * Math.sqrt(2 * Math.PI)),
			0
		);
		return { value, density };
	});
}

const humps = [
	{ weight: 0.6, mean: 8.0, standardUncertainty: 0.15, explanation: 'strong' },
	{ weight: 0.4, mean: 7.3, standardUncertainty: 0.12, explanation: 'none' }
];

/** A diagnosis with two humps, a group and a tail of little things. */
export const diagnosis: Diagnosis = {
	unit: 'dKH',
	explanations: [
		told('strong', 0.41, 8.0),
		told('none', 0.29, 7.3),
		told('large', 0.14, 8.0),
		told('realChange', 0.05, 7.3),
		told('hanging', 0.04, 7.2),
		told('parallax', 0.025, 7.4),
		told('pale', 0.01, 7.5),
		told('light', 0.005, 7.5)
	],
	faults: { strong: 0.41, large: 0.14, hanging: 0.04, parallax: 0.025, pale: 0.01, light: 0.005 },
	classes: {
		technique: 0.1,
		reagent: 0.42,
		ware: 0.14,
		method: 0,
		secondMethod: 0,
		reference: 0,
		sampling: 0,
		water: 0.05
	},
	nothingWrong: 0.29,
	waterChanged: 0.05,
	noneOfThese: 0.03,
	groups: [{ faults: ['strong', 'large'], probability: 0.55, splitBy: 'freshLot' }],
	trueValue: {
		mean: 7.7,
		median: 7.8,
		standardDeviation: 0.37,
		interval95: [7.1, 8.3],
		humps,
		density: densityOf(humps)
	},
	cumulative: (value) => Math.min(1, Math.max(0, (value - 6) / 3)),
	isIndependent: false,
	unused: []
};

const cost = { minutes: 8, priceMinutes: 1, riskMinutes: 0 };
export const ranking: CheckRanking = {
	ranked: [
		{
			kind: 'checks',
			checks: ['freshLot'],
			information: 0.6,
			cost,
			score: 0.06,
			changesAdvice: 0.4,
			because: 'It parts a strong titrant from a large sample.'
		},
		{
			kind: 'cue',
			cue: 'bottle',
			information: 0.1,
			cost: { minutes: 0.2, priceMinutes: 0, riskMinutes: 0 },
			score: 0.05,
			changesAdvice: 0.1,
			because: 'An old bottle speaks for a strong titrant.'
		},
		{
			kind: 'checks',
			checks: ['largerSample', 'smallerSample'],
			information: 0.2,
			cost: { minutes: 18, priceMinutes: 2, riskMinutes: 0 },
			score: 0.01,
			changesAdvice: 0.1,
			because: 'It shows a slip of a fixed volume.'
		}
	],
	next: null,
	isEnough: false,
	because: 'A check could still change the advice.'
};
