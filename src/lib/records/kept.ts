/** What is wrong with the storage of this browser. */
export type StorageTrouble = {
	/**
	 * 'missing': not there, or refused to this page; 'blocked': another window holds it in an older
	 * form; 'full'; 'gap': an earlier entry was not kept, so this one would stand alone; 'failed': else.
	 */
	why: 'missing' | 'blocked' | 'full' | 'gap' | 'failed';
	/** In words, with what the browser said. */
	detail: string;
};

/** How a write went. Nothing is thrown at a screen: it says so and works on. */
export type Kept =
	| { kept: true }
	/** Another window has gone on with this log. */
	| { kept: false; because: 'elsewhere' }
	/** Storage does not take it: from here on the page alone remembers. */
	| ({ kept: false; because: 'storage' } & StorageTrouble);

export const isKept: Kept = { kept: true };
export const isElsewhere: Kept = { kept: false, because: 'elsewhere' };
export const standsAlone: Kept = {
	kept: false,
	because: 'storage',
	why: 'gap',
	detail: 'an earlier entry of this log was not kept'
};

const missing = ['MissingAPIError', 'SecurityError', 'InvalidStateError', 'NotAllowedError'];

/**
 * Names of an error and of those behind it: a full disk often comes as an ended transaction, a taken
 * key as the failure of a whole batch.
 */
function namesOf(error: unknown): string[] {
	if (typeof error !== 'object' || error === null) return [];
	const { name, inner, failures } = error as {
		name?: unknown;
		inner?: unknown;
		failures?: unknown;
	};
	const behind = [inner, ...(Array.isArray(failures) ? failures : [])];
	return [String(name ?? ''), ...behind.flatMap((each) => (each === error ? [] : namesOf(each)))];
}

/** What an error of the database means for the person. */
export function troubleOf(error: unknown): StorageTrouble {
	const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : '';
	const names = namesOf(error);
	const words = (plain: string) => (said ? `${plain}: ${said}` : plain);
	if (names.includes('QuotaExceededError'))
		return { why: 'full', detail: words('the storage of this browser is full') };
	if (names.some((name) => missing.includes(name)))
		return { why: 'missing', detail: words('this browser gives the page no storage') };
	return { why: 'failed', detail: words('the storage of this browser failed') };
}

/** Whether a key was taken already: somebody else has written there. */
export function isTaken(error: unknown): boolean {
	return namesOf(error).includes('ConstraintError');
}
