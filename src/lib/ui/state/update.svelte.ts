/**
 * A newer version of the site lies ready beside this one. It is taken when the person asks for it,
 * never by itself: a page in use goes on as it is.
 */
class SiteUpdate {
	#waiting: ServiceWorker | null = $state.raw(null);
	#isWatching = false;

	/** Looks out for newer versions from now on; again and again does no harm. */
	watch(): void {
		if (this.#isWatching || typeof navigator === 'undefined') return;
		if (!('serviceWorker' in navigator)) return;
		this.#isWatching = true;
		void navigator.serviceWorker.ready.then((registration) => this.#watchOver(registration));
	}

	/** A page can say so, and offer to take it. */
	get isReady(): boolean {
		return this.#waiting !== null;
	}

	/** Loads this page anew in the newer version. Other windows go on with what they have. */
	take(): void {
		if (!this.#waiting) return;
		navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
			once: true
		});
		this.#waiting.postMessage('take');
	}

	#watchOver(registration: ServiceWorkerRegistration): void {
		const look = () => {
			// The first version of all takes over at once and is no news.
			this.#waiting = navigator.serviceWorker.controller ? registration.waiting : null;
		};
		look();
		registration.addEventListener('updatefound', () => {
			registration.installing?.addEventListener('statechange', look);
		});
	}
}

export const siteUpdate = new SiteUpdate();
