import type { CheckRanking, Diagnosis } from '$lib/judgement';
import type { WithoutPiece } from '$lib/ui/conversation/run';
import { judge, judgeWithout, wholeOf, type Answer, type Question } from './judge';
import type { Asked, Said } from './judge.worker';

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
	without: readonly WithoutPiece[] = $state.raw([]);
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
		this.without = [];
		this.trouble = null;
		this.isThinking = question !== null;
		if (question === null) {
			this.diagnosis = null;
			this.ranking = null;
			return;
		}
		this.#thread ??= this.#opened();
		if (this.#thread) this.#thread.postMessage({ number: this.#number, question } satisfies Asked);
		else this.#askHere(this.#number, question);
	}

	close(): void {
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
		if ('answer' in said) this.#take(said.answer);
		else if ('without' in said) this.without = said.without;
		else {
			this.trouble = `${said.trouble.charAt(0).toUpperCase()}${said.trouble.slice(1)}.`;
			this.isThinking = false;
		}
	}
	#take({ diagnosis, ranking }: Answer): void {
		this.diagnosis = wholeOf(diagnosis);
		this.ranking = ranking;
		this.isThinking = false;
	}

	/** On this thread, after what was typed has been painted. */
	#askHere(number: number, question: Question): void {
		setTimeout(() => {
			if (number !== this.#number) return;
			try {
				this.#hear({ number, answer: judge(question) });
				this.#withoutHere(number, question, 0, []);
			} catch (error) {
				const trouble = error instanceof Error ? error.message : String(error);
				this.#hear({ number, trouble });
			}
		});
	}
	#withoutHere(number: number, question: Question, at: number, found: WithoutPiece[]): void {
		if (at >= question.evidence.length) return this.#hear({ number, without: found });
		setTimeout(() => {
			if (number !== this.#number) return;
			const piece = judgeWithout(question, at);
			this.#withoutHere(number, question, at + 1, piece ? [...found, piece] : found);
		});
	}
}
