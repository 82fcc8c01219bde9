import { isElsewhere, isKept, isTaken, troubleOf, type Kept, type StorageTrouble } from './kept';

/** How storage fares: one for all tables of a page, since they fail together. */
export class Health {
	trouble: StorageTrouble | null = null;

	/** Does a write and says how it went. */
	async keeping(write: () => Promise<unknown>): Promise<Kept> {
		try {
			const answer = await write();
			return isRefusal(answer) ? answer : isKept;
		} catch (error) {
			if (isTaken(error)) return isElsewhere;
			this.trouble = troubleOf(error);
			return { kept: false, because: 'storage', ...this.trouble };
		}
	}

	/** What was read, or, where nothing can be read, the other. */
	async reading<T>(read: () => Promise<T>, otherwise: T): Promise<T> {
		try {
			return await read();
		} catch (error) {
			this.trouble = troubleOf(error);
			return otherwise;
		}
	}
}

function isRefusal(answer: unknown): answer is Kept {
	return typeof answer === 'object' && answer !== null && 'kept' in answer;
}
