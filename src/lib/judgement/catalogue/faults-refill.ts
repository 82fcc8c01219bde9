import type { Fault } from './fault';
import { about, everyAnalyte, habitAndOnce, mixed } from './make-fault';

const common = {
	class: 'technique',
	target: 'constant',
	analytes: everyAnalyte,
	needs: { isFilledAgain: true }
} as const;
const syringe = ['syringe'] as const;
const practice = 'Size: computed on the practice bench, which plays it. Prior: judgement.';

/** What can go astray where one filling does not reach the end, and it is filled again. */
export const refillFaults: readonly Fault[] = [
	{
		...common,
		id: 'fillingForgotten',
		name: 'a filling left out of the sum, or counted twice',
		scope: 'oneTest',
		deliveries: ['syringe', 'burette'],
		sizes: mixed('fillings', [0.8, -1, 0.012], [0.2, 1, 0.012]),
		prior: 0.045,
		remedy: 'Make a stroke for every filling, and add them up before you look at the mark.',
		shownBy: ['repeatFull', 'repeatQuick'],
		origin: 'Size: exact, one whole filling. Prior and how often it is counted twice: judgement.'
	},
	...habitAndOnce(
		{
			...common,
			id: 'filledByLineAgain',
			name: 'filled by the liquid each time, read by the seal',
			deliveries: syringe,
			sizes: about(-1, 0.08, 'tipsEach'),
			remedy: 'Set the seal on the full mark at every filling, and read the seal.',
			shownBy: ['reference', 'otherHands'],
			origin: practice
		},
		{ habit: 0.025, once: 0.02 }
	),
	...habitAndOnce(
		{
			...common,
			id: 'lineAtRefills',
			name: 'filled and read by the liquid, the tip lost at each further filling',
			deliveries: syringe,
			sizes: about(-1, 0.12, 'tipsAgain'),
			remedy: 'Use the seal: what the tip gives once the line has left the scale is not counted.',
			shownBy: ['reference', 'otherHands'],
			origin: practice
		},
		{ habit: 0.03, once: 0.01 }
	)
];
