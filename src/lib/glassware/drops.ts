/** Standard gravity, m/s². */
const GRAVITY = 9.80665;

/** Time of a free fall, s: √(2h/g). 5 cm take 0.10 s. */
export function fallSeconds(heightCm: number): number {
	return Math.sqrt((2 * heightCm) / 100 / GRAVITY);
}

/**
 * How a hand that holds the plunger moves it. A drop takes about 0.6 s to swell; held past 1.5 s
 * the flow grows steadily to a stream. (Times are a choice, not a measurement.)
 */
export type HoldingHand = {
	/** Flow at first, mL/s. */
	slowMlPerS: number;
	/** Until then it stays slow, s. */
	steadySeconds: number;
	/** It grows by so much each second, mL/s per s, up to `fastMlPerS`. */
	rampMlPerS2: number;
	fastMlPerS: number;
};

export function holdingHand(dropMl: number): HoldingHand {
	return {
		slowMlPerS: dropMl / 0.6,
		steadySeconds: 1.5,
		rampMlPerS2: dropMl / 0.3,
		fastMlPerS: dropMl * 12
	};
}

const rampSecondsOf = (hand: HoldingHand) => (hand.fastMlPerS - hand.slowMlPerS) / hand.rampMlPerS2;

/** Volume pushed after holding for so many seconds, mL. */
export function heldMl(hand: HoldingHand, seconds: number): number {
	if (seconds <= 0) return 0;
	const slow = hand.slowMlPerS * Math.min(seconds, hand.steadySeconds);
	const past = seconds - hand.steadySeconds;
	if (past <= 0) return slow;
	const ramp = Math.min(past, rampSecondsOf(hand));
	const ramped = hand.slowMlPerS * ramp + (hand.rampMlPerS2 * ramp * ramp) / 2;
	return slow + ramped + hand.fastMlPerS * Math.max(0, past - ramp);
}

/** Seconds of holding after which so much was pushed; the other way round of `heldMl`. */
export function secondsToHold(hand: HoldingHand, volumeMl: number): number {
	const slow = hand.slowMlPerS * hand.steadySeconds;
	if (volumeMl <= slow) return Math.max(0, volumeMl) / hand.slowMlPerS;
	const ramp = rampSecondsOf(hand);
	const ramped = hand.slowMlPerS * ramp + (hand.rampMlPerS2 * ramp * ramp) / 2;
	const past = volumeMl - slow;
	if (past <= ramped)
		return (
			hand.steadySeconds +
			(Math.sqrt(hand.slowMlPerS ** 2 + 2 * hand.rampMlPerS2 * past) - hand.slowMlPerS) /
				hand.rampMlPerS2
		);
	return hand.steadySeconds + ramp + (past - ramped) / hand.fastMlPerS;
}
