import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Buzzer } from '../../../../src/lib/ui/state/buzzer';
import { Speaker } from '../../../../src/lib/ui/state/speaker';
import { holdScreenOn, type WakeState } from '../../../../src/lib/ui/state/wake-lock';

const turn = async () => {
	for (let i = 0; i < 5; i++) await Promise.resolve();
};
const seen = (state: 'visible' | 'hidden') => {
	vi.spyOn(document, 'visibilityState', 'get').mockReturnValue(state);
	document.dispatchEvent(new Event('visibilitychange'));
};

afterEach(() => {
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
	vi.useRealTimers();
});

describe('the screen held on', () => {
	class Sentinel extends EventTarget {
		release = vi.fn(async () => {
			this.dispatchEvent(new Event('release'));
		});
	}
	const withLock = (request: () => Promise<unknown>) =>
		vi.stubGlobal('navigator', { wakeLock: { request: vi.fn(request) } });

	it('is asked for again whenever the page comes back, and let go at the end', async () => {
		const sentinels: Sentinel[] = [];
		withLock(async () => {
			sentinels.push(new Sentinel());
			return sentinels.at(-1);
		});
		const told: WakeState[] = [];
		const letGo = holdScreenOn((state) => told.push(state));
		await turn();
		expect(told).toEqual(['off', 'held']);
		// The system lets go of it by itself when the page is hidden.
		seen('hidden');
		sentinels[0]?.dispatchEvent(new Event('release'));
		await turn();
		expect(sentinels).toHaveLength(1);
		seen('visible');
		await turn();
		expect(sentinels).toHaveLength(2);
		expect(told).toEqual(['off', 'held', 'off', 'held']);
		letGo();
		expect(sentinels[1]?.release).toHaveBeenCalledOnce();
		seen('visible');
		await turn();
		expect(sentinels).toHaveLength(2);
	});

	it('is let go of when it comes after the end', async () => {
		const late = new Sentinel();
		let give: (sentinel: Sentinel) => void = () => {};
		withLock(() => new Promise((resolve) => (give = resolve)));
		const letGo = holdScreenOn(() => {});
		letGo();
		give(late);
		await turn();
		expect(late.release).toHaveBeenCalledOnce();
	});

	it('says when it is refused, and when there is nothing that could hold it', async () => {
		withLock(() => Promise.reject(new Error('low battery')));
		const told: WakeState[] = [];
		holdScreenOn((state) => told.push(state))();
		const letGo = holdScreenOn((state) => told.push(state));
		await turn();
		letGo();
		expect(told).toEqual(['off', 'off', 'refused']);
		vi.stubGlobal('navigator', {});
		holdScreenOn((state) => told.push(state));
		expect(told.at(-1)).toBe('missing');
	});
});

describe('the voice', () => {
	const spoken: string[] = [];
	const cancel = vi.fn();
	beforeEach(() => {
		spoken.length = 0;
		cancel.mockClear();
		vi.stubGlobal(
			'SpeechSynthesisUtterance',
			class {
				lang = '';
				constructor(readonly text: string) {}
			}
		);
		vi.stubGlobal('speechSynthesis', {
			cancel,
			speak: (utterance: { text: string }) => spoken.push(utterance.text)
		});
	});

	it('says a text once, cuts off what it was saying, and falls silent', () => {
		const speaker = new Speaker();
		speaker.say('Swirl.');
		speaker.say('Swirl.');
		speaker.say('Wait.');
		expect(spoken).toEqual(['Swirl.', 'Wait.']);
		expect(cancel).toHaveBeenCalledTimes(2);
		speaker.stop();
		expect(cancel).toHaveBeenCalledTimes(3);
	});

	it('is not there in a browser without one, and then says nothing', () => {
		expect(Speaker.isThere).toBe(true);
		vi.stubGlobal('speechSynthesis', undefined);
		expect(Speaker.isThere).toBe(false);
		new Speaker().say('Swirl.');
		expect(spoken).toEqual([]);
	});
});

describe('tones and buzzes', () => {
	const started: number[] = [];
	class FakeContext {
		static made = 0;
		currentTime = 0;
		state = 'suspended';
		destination = {};
		resume = vi.fn(async () => {});
		close = vi.fn(async () => {});
		constructor() {
			FakeContext.made++;
		}
		createOscillator() {
			const oscillator = {
				frequency: { value: 0 },
				connect: (to: unknown) => to,
				start: () => started.push(oscillator.frequency.value),
				stop: () => {}
			};
			return oscillator;
		}
		createGain() {
			return {
				gain: { setValueAtTime: () => {}, exponentialRampToValueAtTime: () => {} },
				connect: () => {}
			};
		}
	}
	beforeEach(() => {
		started.length = 0;
		FakeContext.made = 0;
		vi.stubGlobal('AudioContext', FakeContext);
	});

	it('are off until they are asked for', () => {
		const vibrate = vi.fn();
		vi.stubGlobal('navigator', { vibrate });
		const ways = { sound: false, vibration: false };
		const buzzer = new Buzzer(() => ways);
		buzzer.wake();
		buzzer.end();
		expect([FakeContext.made, started.length, vibrate.mock.calls.length]).toEqual([0, 0, 0]);
		ways.sound = true;
		ways.vibration = true;
		buzzer.end();
		// No press has woken it yet: only the vibration can be had.
		expect([started.length, vibrate.mock.calls.length]).toEqual([0, 1]);
		buzzer.wake();
		buzzer.end();
		buzzer.tick();
		expect(started).toEqual([880, 880, 880, 1400]);
		expect(vibrate).toHaveBeenCalledTimes(3);
	});

	it('do without what the browser has not', () => {
		vi.stubGlobal('AudioContext', undefined);
		vi.stubGlobal('navigator', {});
		expect([Buzzer.canSound, Buzzer.canVibrate]).toEqual([false, false]);
		const buzzer = new Buzzer(() => ({ sound: true, vibration: true }));
		expect(() => {
			buzzer.wake();
			buzzer.end();
			buzzer.tick();
			buzzer.stop();
		}).not.toThrow();
	});
});
