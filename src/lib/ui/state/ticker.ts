/** A timer that comes late is not made good by calls in a burst; this much lateness is a gap. */
const GAP_BEATS = 2;

/**
 * Calls `beat` once every `periodMs`, the first time after one period. Each beat is set by the clock
 * and not by the one before it, so that they do not drift; beats missed while the page slept are left
 * out.
 *
 * @param now a clock in ms
 * @returns how to stop
 */
export function everyBeat(periodMs: number, now: () => number, beat: () => void): () => void {
	let next = now() + periodMs;
	let timer: ReturnType<typeof setTimeout>;
	const wait = () => {
		timer = setTimeout(strike, Math.max(0, next - now()));
	};
	function strike() {
		if (now() - next > GAP_BEATS * periodMs) next = now();
		next += periodMs;
		wait();
		beat();
	}
	wait();
	return () => clearTimeout(timer);
}

/**
 * Calls `look` several times a second, and at once when the page is seen again: for figures that
 * follow a clock. What they show is computed from the time; nothing is counted here.
 */
export function whileLooking(look: () => void, everyMs = 200): () => void {
	const timer = setInterval(look, everyMs);
	document.addEventListener('visibilitychange', look);
	return () => {
		clearInterval(timer);
		document.removeEventListener('visibilitychange', look);
	};
}
