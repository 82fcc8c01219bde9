/**
 * A small setting that outlives the page, kept as JSON in the browser's own storage. Where storage
 * is missing or refused it lives as long as the page does; what is damaged is replaced by the
 * default.
 */
export class Persisted<T> {
	#value: T = $state.raw() as T;

	constructor(
		private readonly key: string,
		fallback: T,
		private readonly read: (stored: unknown) => T
	) {
		this.#value = fallback;
		try {
			const text = localStorage.getItem(key);
			if (text !== null) this.#value = read(JSON.parse(text));
		} catch {
			// No storage, or not what was written: the default stands.
		}
	}

	get current(): T {
		return this.#value;
	}

	set current(value: T) {
		this.#value = this.read(value);
		try {
			localStorage.setItem(this.key, JSON.stringify(this.#value));
		} catch {
			// Kept in memory only.
		}
	}
}
