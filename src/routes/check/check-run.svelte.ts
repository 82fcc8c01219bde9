import {
	bandOf,
	correctionInputOf,
	correctionPlan,
	decide,
	salinityOf,
	type CorrectionPlan,
	type Decision,
	type Diagnosis,
	type PlanRefused
} from '$lib/judgement';
import { convertValue, usedMlOf, type Analyte, type Kit, type Unit } from '$lib/kits';
import { methodFiguresFor, methodFiguresOf } from '$lib/metrology';
import type {
	CheckEvent,
	CheckVerdict,
	Evidence,
	LivestockLook,
	Means,
	Tank
} from '$lib/observation';
import {
	replayCheck,
	stepCheck,
	withEvent,
	withUndo,
	type CheckLog,
	type CheckState
} from '$lib/procedure';
import type { CheckHeader, CheckRecords } from '$lib/records';
import { usedMlOfNext } from '$lib/ui/check/used';
import type { CheckRun as CheckRunProps } from '$lib/ui/conversation/run';
import { KeptLog } from '../kept-log.svelte';
import { checkHeaderOf } from './check-header';
import type { Question } from './judge';
import { Judging } from './judging.svelte';
import { lastSaid, UNDO } from './last-said';
import type { OpenedCheck } from './open-check';
import { rateOfEvidence } from './rate-of-evidence';

/**
 * One check of a reading, wired together: the log is the truth, the state is its replay, each entry
 * goes to the records as it is made, and what is believed is worked out from the state. No rule of the
 * trade stands here.
 */
export class CheckRun implements CheckRunProps {
	log: CheckLog = $state.raw() as CheckLog;
	state: CheckState = $state.raw() as CheckState;
	readonly unit: Unit;
	readonly kept: KeptLog<CheckHeader>;
	readonly #stored: CheckHeader | null;

	constructor(
		{ log, stored, toGive }: OpenedCheck,
		records: CheckRecords,
		unitOf: (analyte: Analyte) => Unit,
		private readonly clock: () => number,
		private readonly judging: Judging = new Judging()
	) {
		this.kept = new KeptLog(records, stored !== null);
		this.#stored = stored;
		this.unit = unitOf(log.analyte);
		this.log = log;
		this.state = replayCheck(log);
		for (const { evidence, testId } of toGive) this.give(evidence, testId);
		this.#ask();
	}

	get storage() {
		return this.kept.storage;
	}
	get kit(): Kit | null {
		return this.log.kit;
	}
	get diagnosis(): Diagnosis | null {
		return this.judging.diagnosis;
	}
	get ranking() {
		return this.judging.ranking;
	}
	get without() {
		return this.judging.without;
	}
	get isThinking() {
		return this.judging.isThinking;
	}
	get trouble() {
		return this.judging.trouble;
	}
	readonly usedMl = $derived.by((): number | null => {
		const { kit } = this.log;
		const reading = this.state.inQuestion?.reading;
		if (!kit || !reading) return null;
		// A reading in doubt does not tell what the next test takes: what it will probably read does.
		const reads = this.ranking?.repeatReads;
		const nextMl = reads && usedMlOfNext(kit, this.log.analyte, reads, reading.takenOff);
		if (typeof nextMl === 'number') return nextMl;
		const { sealMl, levelMl, drops } = reading.marks ?? {};
		try {
			const isFilledAgain = kit.delivery.by !== 'dropper' && kit.delivery.refilled;
			// The last mark leaves out the fillings before.
			const markMl = isFilledAgain ? undefined : (sealMl ?? levelMl);
			if (drops !== undefined) return usedMlOf(kit, { drops });
			if (markMl !== undefined) return usedMlOf(kit, { markMl });
		} catch {
			// A mark that is not on this scale says nothing of what was used.
		}
		// Where another value was taken off, the number alone does not tell.
		if (kit.analyte !== this.log.analyte) return null;
		const inKit = convertValue(reading.value, reading.unit, kit.unit, kit.analyte);
		return inKit / methodFiguresOf(kit).valuePerMl;
	});

	readonly decision = $derived.by((): Decision | null => {
		const { tank, livestock, isEmergency, isUnitDoubted, evidence } = this.state;
		const { settled } = this.judging;
		const { analyte } = this.log;
		if (!isEmergency && (!settled || !livestock)) return null;
		const diagnosis = settled?.diagnosis ?? null;
		const ranking = settled?.ranking ?? null;
		const band = bandOf(tank, this.unit, analyte);
		const known = evidence.map((each) => each.evidence);
		return decide({
			diagnosis,
			analyte,
			band,
			livestock: livestock ?? 'notLooked',
			next: ranking?.next ?? null,
			ranked: ranking?.ranked ?? [],
			isEnough: ranking?.isEnough ?? false,
			rate: diagnosis && rateOfEvidence(known, diagnosis, band.unit, analyte),
			consumptionPerDay: tank.consumptionPerDay ?? null,
			isUnitSure: !isUnitDoubted,
			salinity: salinityOf(tank),
			isEmergency,
			...(tank.who === undefined ? {} : { who: tank.who }),
			...(tank.hasStonyCorals === undefined ? {} : { hasStonyCorals: tank.hasStonyCorals })
		});
	});

	readonly plan = $derived.by((): CorrectionPlan | PlanRefused | null => {
		const { decision } = this;
		const { settled } = this.judging;
		const { tank, means, isUnitDoubted } = this.state;
		if (decision?.verdict !== 'adjust' || !settled || !means) return null;
		const { diagnosis } = settled;
		const { analyte } = this.log;
		return correctionPlan(
			correctionInputOf({
				...{ decision, diagnosis, tank, means, analyte },
				isUnitSure: !isUnitDoubted,
				testReading: this.state.inQuestion?.reading ?? null
			})
		);
	});

	now(): number {
		return this.clock();
	}

	give(evidence: Evidence, testId?: string): boolean {
		return this.#append({
			type: 'evidence.given',
			evidence,
			...(testId === undefined ? {} : { testId })
		});
	}
	takeBack(entryId: string): void {
		this.#undo([{ id: entryId }], 'back');
	}
	leaveOut(ids: readonly string[]): void {
		this.#append({
			type: 'checks.leftOut',
			ids: [...this.state.leftOut, ...ids.filter((id) => !this.state.leftOut.includes(id))]
		});
	}
	putBack(): void {
		this.#append({ type: 'checks.leftOut', ids: [] });
	}
	doubtUnit(isDoubted: boolean): void {
		this.#append({ type: 'unit.doubted', isDoubted });
	}
	describeTank(tank: Tank): void {
		this.#append({ type: 'tank.described', tank });
	}
	seeLivestock(look: LivestockLook): void {
		this.#append({ type: 'livestock.seen', look });
	}
	seeEmergency(isSeen: boolean): void {
		this.#append({ type: 'emergency.seen', isSeen });
	}
	chooseMeans(means: Means | null): void {
		this.#append({ type: 'means.chosen', means });
	}
	writeNote(text: string): void {
		this.#append({ type: 'note.written', text });
	}
	close(): void {
		this.#append({ type: 'check.closed' });
	}

	get canUndo(): boolean {
		return lastSaid(this.log.entries).length > 0;
	}
	undo(): void {
		this.#undo(lastSaid(this.log.entries), UNDO);
	}
	/** The page that shows it is left. */
	leave(): void {
		this.judging.close();
	}

	/** One time for all that is said in one turn, later than all before, whatever the clock does. */
	#turn: number | null = null;
	#at(): number {
		if (this.#turn === null) {
			const last = this.log.entries.at(-1)?.at ?? this.log.startedAtEpochMs;
			this.#turn = Math.max(Math.floor(this.clock()), last + 1);
			queueMicrotask(() => (this.#turn = null));
		}
		return this.#turn;
	}
	#counter = 0;
	#newId(kind: string): string {
		return `${kind}-${this.log.entries.length.toString(36)}-${(this.#counter++).toString(36)}`;
	}

	#append(event: CheckEvent): boolean {
		const entry = { id: this.#newId('said'), at: this.#at(), event };
		const next = stepCheck(this.state, entry);
		if (!next) return false;
		this.#goOn(withEvent(this.log, entry), next);
		return true;
	}
	#undo(entries: readonly { id: string }[], kind: string): void {
		if (entries.length === 0) return;
		let log = this.log;
		for (const { id } of [...entries].reverse()) {
			log = withUndo(log, { id: this.#newId(kind), at: this.#at(), undoes: id });
		}
		this.#goOn(log, replayCheck(log));
	}
	#goOn(log: CheckLog, state: CheckState): void {
		const before = this.state;
		const first = this.log.entries.length;
		this.log = log;
		this.state = state;
		this.#write(first);
		const asked = ['evidence', 'leftOut', 'tank', 'livestock'] as const;
		if (asked.some((of) => before[of] !== state[of])) this.#ask();
	}

	/** Asked once for all that is said in one turn. */
	#isAsking = false;
	#ask(): void {
		if (this.#isAsking) return;
		this.#isAsking = true;
		queueMicrotask(() => {
			this.#isAsking = false;
			this.judging.ask(this.#question());
		});
	}
	#question(): Question | null {
		const { inQuestion, evidence, leftOut, kit, tank, livestock } = this.state;
		if (!inQuestion) return null;
		const { low, high, unit } = bandOf(tank, this.unit, this.log.analyte);
		return {
			evidence: evidence.map((each) => each.evidence),
			options: {
				unit: this.unit,
				analyte: this.log.analyte,
				...(kit
					? {
							method: methodFiguresFor(kit, this.log.analyte, inQuestion.reading.takenOff)
						}
					: {})
			},
			band: { low, high, unit },
			livestock: livestock ?? 'notLooked',
			leftOut
		};
	}

	#write(first: number): void {
		const verdict: CheckVerdict | null = this.decision?.verdict ?? null;
		const header = checkHeaderOf(this.log, this.state, {
			now: this.now(),
			verdict,
			stored: this.#stored
		});
		this.kept.write(this.log.entries.slice(first), first, header);
	}
}
