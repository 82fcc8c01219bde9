import type { CheckRanking } from '$lib/judgement';
import type { WithoutPiece } from '$lib/ui/conversation/run';
import { judge, judgeNext, judgeWithout, type PlainDiagnosis, type Question } from './judge';

/** A question with its number; only the latest is worth an answer. */
export type Asked = { number: number; question: Question };
/** What is said of it, one after the other, as it is worked out. */
export type Said = { number: number } & (
	| { diagnosis: PlainDiagnosis }
	| { ranking: CheckRanking }
	| { without: readonly WithoutPiece[] }
	| { trouble: string }
);

/** Lets a newer question, or the page, come in between two long sums. */
const breath = () => new Promise((go) => setTimeout(go));

/**
 * Answers a question step by step: what is believed, what to check next, and what each piece of
 * evidence has to do with it. Stops where it is no longer asked.
 */
export async function answer(
	{ number, question }: Asked,
	isAsked: () => boolean,
	say: (said: Said) => void
): Promise<void> {
	try {
		await breath();
		if (!isAsked()) return;
		say({ number, diagnosis: judge(question) });
		await breath();
		if (!isAsked()) return;
		say({ number, ranking: judgeNext(question) });
		const without: WithoutPiece[] = [];
		for (let at = 0; at < question.evidence.length; at++) {
			await breath();
			if (!isAsked()) return;
			const piece = judgeWithout(question, at);
			if (piece) without.push(piece);
		}
		say({ number, without });
	} catch (error) {
		say({ number, trouble: error instanceof Error ? error.message : String(error) });
	}
}
