/// <reference lib="webworker" />
import { judge, judgeWithout, type Answer, type Question } from './judge';
import type { WithoutPiece } from '$lib/ui/conversation/run';

/** A question with its number; only the latest is worth an answer. */
export type Asked = { number: number; question: Question };
export type Said = { number: number } & (
	{ answer: Answer } | { without: readonly WithoutPiece[] } | { trouble: string }
);

const here = self as unknown as DedicatedWorkerGlobalScope;
let latest = -1;
/** Lets a newer question come in between two long sums. */
const breath = () => new Promise((go) => setTimeout(go));
const say = (said: Said) => here.postMessage(said);

here.onmessage = ({ data }: MessageEvent<Asked>) => {
	latest = data.number;
	void answer(data);
};

async function answer({ number, question }: Asked): Promise<void> {
	await breath();
	if (number !== latest) return;
	try {
		say({ number, answer: judge(question) });
		const without: WithoutPiece[] = [];
		for (let at = 0; at < question.evidence.length; at++) {
			await breath();
			if (number !== latest) return;
			const piece = judgeWithout(question, at);
			if (piece) without.push(piece);
		}
		say({ number, without });
	} catch (error) {
		say({ number, trouble: error instanceof Error ? error.message : String(error) });
	}
}
