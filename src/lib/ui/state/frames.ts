/**
 * Calls `draw` once in every frame while the page can be seen, and hands back how to stop.
 */
export function everyFrame(draw: () => void): () => void {
	let request = 0;
	const next = () => {
		draw();
		request = requestAnimationFrame(next);
	};
	request = requestAnimationFrame(next);
	return () => cancelAnimationFrame(request);
}
