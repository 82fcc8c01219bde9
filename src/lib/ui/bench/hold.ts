/**
 * Makes a button one that is held: pressed it starts, let go it stops, by pointer or by keyboard. A
 * press that comes without either (a screen reader, a switch) calls `press` once.
 */
export function hold(input: { start: () => void; stop: () => void; press: () => void }) {
	return (button: HTMLElement): (() => void) => {
		let isHeld = false;
		let wasHeld = false;
		const start = () => {
			if (isHeld) return;
			isHeld = true;
			wasHeld = true;
			input.start();
		};
		const stop = () => {
			if (!isHeld) return;
			isHeld = false;
			input.stop();
		};
		const handlers: [string, (event: Event) => void][] = [
			[
				'pointerdown',
				(event) => {
					const pointer = event as PointerEvent;
					if (pointer.button > 0) return;
					button.setPointerCapture?.(pointer.pointerId);
					start();
				}
			],
			['pointerup', stop],
			['pointercancel', stop],
			['lostpointercapture', stop],
			['blur', stop],
			['contextmenu', (event) => event.preventDefault()],
			[
				'keydown',
				(event) => {
					const key = event as KeyboardEvent;
					if (key.code !== 'Space' || key.repeat) return;
					event.preventDefault();
					start();
				}
			],
			[
				'keyup',
				(event) => {
					if ((event as KeyboardEvent).code !== 'Space') return;
					event.preventDefault();
					stop();
				}
			],
			[
				'click',
				() => {
					if (!wasHeld) input.press();
					wasHeld = false;
				}
			]
		];
		for (const [type, handler] of handlers) button.addEventListener(type, handler);
		const hide = () => stop();
		document.addEventListener('visibilitychange', hide);
		return () => {
			stop();
			for (const [type, handler] of handlers) button.removeEventListener(type, handler);
			document.removeEventListener('visibilitychange', hide);
		};
	};
}
