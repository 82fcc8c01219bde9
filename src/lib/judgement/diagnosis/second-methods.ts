import type { Evidence } from '../../observation';
import type { SecondMethod } from '../catalogue/fault';
import { instrumentOf } from './rows-of-instruments';

/** What kind of method each instrument of the evidence is, as far as it was said. */
export class SecondMethods {
	readonly #kinds = new Map<string, SecondMethod>();

	/** Whether there is any reading by another method. */
	readonly isAny: boolean;

	constructor(evidence: readonly Evidence[]) {
		this.isAny = evidence.some((each) => each.kind === 'secondMethod');
		for (const each of evidence)
			if (each.kind === 'secondMethod' && each.method)
				this.#kinds.set(instrumentOf(each), each.method);
	}

	get kinds(): ReadonlySet<SecondMethod> {
		return new Set(this.#kinds.values());
	}

	/** Whether an instrument can have what befalls these methods; any can where none is named. */
	canHave(instrument: string, methods: readonly SecondMethod[] | undefined): boolean {
		const kind = this.#kinds.get(instrument);
		return methods === undefined || (kind !== undefined && methods.includes(kind));
	}
}
