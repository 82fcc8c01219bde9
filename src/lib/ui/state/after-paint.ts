/** Where no frame comes, it is done after so long, ms. */
const LATEST_MS = 100;

/**
 * Does a task once what was changed just now is on the screen: what can come
 * a frame later does not keep the answer to a press waiting.
 *
 * @returns how to leave it undone
 */
export function afterPaint(task: () => void): () => void {
	const { port1, port2 } = new MessageChannel();
	const stop = () => {
		cancelAnimationFrame(frame);
		clearTimeout(late);
		port1.close();
	};
	const once = () => {
		stop();
		task();
	};
	port1.onmessage = once;
	// A frame is called for before it is drawn; the message comes after.
	const frame = requestAnimationFrame(() => port2.postMessage(null));
	const late = setTimeout(once, LATEST_MS);
	return stop;
}
