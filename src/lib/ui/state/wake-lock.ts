/** Whether the screen is held on: asked for, held, refused by the system, or nothing that could hold it. */
export type WakeState = 'off' | 'held' | 'refused' | 'missing';

/**
 * Holds the screen on for as long as the page can be seen. The system lets go whenever the page is
 * hidden, so it is asked again each time the page comes back.
 *
 * @param tell called with every change, the first included
 * @returns how to let go
 */
export function holdScreenOn(tell: (state: WakeState) => void): () => void {
	const wakeLock: WakeLock | undefined = navigator.wakeLock;
	if (!wakeLock) {
		tell('missing');
		return () => {};
	}
	let sentinel: WakeLockSentinel | null = null;
	let isOver = false;
	let isAsking = false;

	async function ask() {
		if (isOver || isAsking || sentinel || document.visibilityState !== 'visible') return;
		isAsking = true;
		try {
			const held = await wakeLock?.request('screen');
			if (!held) return;
			if (isOver) return void held.release();
			sentinel = held;
			held.addEventListener('release', () => {
				sentinel = null;
				if (!isOver) tell('off');
			});
			tell('held');
		} catch {
			// A battery that is low, a policy of the system: the test goes on without.
			if (!isOver) tell('refused');
		} finally {
			isAsking = false;
		}
	}

	const onSeen = () => void ask();
	document.addEventListener('visibilitychange', onSeen);
	tell('off');
	void ask();
	return () => {
		isOver = true;
		document.removeEventListener('visibilitychange', onSeen);
		void sentinel?.release().catch(() => {});
	};
}
