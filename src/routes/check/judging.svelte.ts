import type { CheckRanking, Diagnosis } from '$lib/judgement';
import type { WithoutPiece } from '$lib/ui/conversation/run';
import { answer, type Asked, type Said } from './answering';
import { wholeOf, type Question } from './judge';

type Thread = Pick<Worker, 'postMessage' | 'terminate'> & {
	onmessage: ((event: MessageEvent<Said>) => void) | null;
	onerror: ((event: ErrorEvent) => void) | null;
};

/** Another thread, where the browser has them. */
function openThread(): Thread | null {
	if (typeof Worker === 'undefined') return null;
	try {
		return new Worker(new URL('./judge.worker.ts', import.meta.url), { type: 'module' });
	} catch {
		return null;
	}
}

/**
 * What is believed of a check, worked out beside the page so that typing never waits. The last answer
 * stays until there is another.
 */
export class Judging {
	diagnosis: Diagnosis | null = $state.raw(null);
	ranking: CheckRanking | null = $state.raw(null);
	/** The two that belong together: between the one and the other nothing can be advised. */
	settled: { diagnosis: Diagnosis; ranking: CheckRanking } | null = $state.raw(null);
	without: readonly WithoutPiece[] | null = $state.raw(null);
	isThinking = $state(false);
	trouble: string | null = $state(null);
	#number = 0;
	#question: Question | null = null;
	#thread: Thread | null | undefined;

	constructor(private readonly open: () => Thread | null = openThread) {}

	/** Null forgets what was believed: there is nothing to believe. */
	ask(question: Question | null): void {
		this.#number++;
		this.#question = question;
		this.without = null;
		this.trouble = null;
		this.isThinking = question !== null;
		if (question === null) {
			this.diagnosis = null;
			this.ranking = null;
			this.settled = null;
			return;
		}
		this.#thread ??= this.#opened();
		if (this.#thread) this.#thread.postMessage({ number: this.#number, question } satisfies Asked);
		else this.#askHere(this.#number, question);
	}

	close(): void {
		this.#number++;
		this.#thread?.terminate();
		this.#thread = undefined;
	}

	#opened(): Thread | null {
		const thread = this.open();
		if (!thread) return null;
		thread.onmessage = ({ data }) => this.#hear(data);
		// A thread that cannot be loaded, without a network for instance, is done without.
		thread.onerror = () => {
			thread.terminate();
			this.#thread = null;
			if (this.#question && this.isThinking) this.#askHere(this.#number, this.#question);
		};
		return thread;
	}

	#hear(said: Said): void {
		if (said.number !== this.#number) return;
		if ('diagnosis' in said) this.diagnosis = wholeOf(said.diagnosis);
		else if ('without' in said) this.without = said.without;
		else if ('ranking' in said) {
			this.ranking = said.ranking;
			this.settled = this.diagnosis && { diagnosis: this.diagnosis, ranking: said.ranking };
			this.isThinking = false;
		} else {
			this.trouble = `${said.trouble.charAt(0).toUpperCase()}${said.trouble.slice(1)}.`;
			this.settled = null;
			this.isThinking = false;
		}
	}

	/** On this thread, after what was typed has been painted. */
	#askHere(number: number, question: Question): void {
		void answer(
			{ number, question },
			() => number === this.#number,
			(said) => this.#hear(said)
		);
	}
}
