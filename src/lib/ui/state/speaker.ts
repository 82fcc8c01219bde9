/** Says instructions aloud with the voice of the system, where there is one. */
export class Speaker {
	#last: string | null = null;

	static get isThere(): boolean {
		return typeof speechSynthesis !== 'undefined' && typeof SpeechSynthesisUtterance === 'function';
	}

	/** Says a text once: what was said last is not said again. What is still being said gives way. */
	say(text: string): void {
		if (!Speaker.isThere || text === this.#last) return;
		this.#last = text;
		const utterance = new SpeechSynthesisUtterance(text);
		utterance.lang = 'en-GB';
		speechSynthesis.cancel();
		speechSynthesis.speak(utterance);
	}

	/** Falls silent, and forgets what it said. */
	stop(): void {
		this.#last = null;
		if (Speaker.isThere) speechSynthesis.cancel();
	}
}
