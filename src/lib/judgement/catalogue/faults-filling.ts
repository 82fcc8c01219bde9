import type { Fault } from './fault';
import { about, alkalinity, habitAndOnce, mixed } from './make-fault';

const syringe = ['syringe'] as const;
const practice = 'Size: computed on the practice bench, which plays it. Prior: judgement.';

/** What can go astray between the bottle of titrant and the first drop. */
export const fillingFaults: readonly Fault[] = [
	...habitAndOnce(
		{
			id: 'filledByLine',
			name: 'filled by the liquid, read by the seal',
			class: 'technique',
			target: 'constant',
			analytes: alkalinity,
			deliveries: syringe,
			sizes: about(-1, 0.06, 'tips'),
			remedy: 'Set the seal on the full mark, and read the seal. The air below it does no harm.',
			shownBy: ['reference', 'largerSample', 'otherHands'],
			origin: practice
		},
		{ habit: 0.025, once: 0.03 }
	),
	...habitAndOnce(
		{
			id: 'readByLine',
			name: 'filled by the seal, read by the liquid',
			class: 'technique',
			target: 'constant',
			analytes: alkalinity,
			deliveries: syringe,
			sizes: about(1, 0.06, 'tips'),
			remedy: 'Read the same mark that you set: best the seal both times.',
			shownBy: ['reference', 'largerSample', 'otherHands'],
			origin: practice
		},
		{ habit: 0.015, once: 0.015 }
	),
	...habitAndOnce(
		{
			id: 'tipFittedLate',
			name: 'tip put on after filling',
			class: 'technique',
			target: 'constant',
			analytes: alkalinity,
			deliveries: syringe,
			// Nozzle and tip make up one; the nozzle was filled.
			sizes: about(0.78, 0.08, 'tips'),
			remedy: 'Put the tip on first, then fill through it.',
			shownBy: ['reference', 'largerSample', 'otherHands'],
			origin:
				'Size: the tip’s own volume without the nozzle, computed on the practice bench. Prior: judgement.'
		},
		{ habit: 0.01, once: 0.018 }
	),
	{
		id: 'tipLoose',
		name: 'tip not seated, dripping by itself',
		class: 'technique',
		target: 'constant',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: syringe,
		// Into the vial unasked: less travel. Beside the vial: more.
		sizes: mixed('drops', [0.7, -3.5, 2.5], [0.3, 2.5, 1.5]),
		prior: 0.012,
		remedy: 'Push the tip on with a twist, and watch it for ten seconds before you begin.',
		shownBy: ['repeatFull'],
		origin: 'Size: common practice, no source. Prior: judgement.'
	},
	{
		id: 'airLeft',
		name: 'air left through the tip',
		class: 'technique',
		target: 'constant',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: ['syringe', 'burette'],
		sizes: about(0.03, 0.012, 'mL'),
		prior: 0.015,
		remedy: 'Keep the end under the liquid until the plunger rests.',
		shownBy: ['repeatFull'],
		origin:
			'Textbook: reads high by the volume of the air; 0.015 to 0.045 mL is judgement, as is the prior.'
	},
	{
		id: 'hangingAtStart',
		name: 'a drop from filling hung at the tip and fell in',
		class: 'technique',
		target: 'constant',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: ['syringe', 'burette'],
		sizes: about(-0.7, 0.3, 'drops'),
		prior: 0.02,
		remedy: 'Wipe the tip before the first drop.',
		shownBy: ['repeatFull'],
		origin: 'Textbook: up to one drop. Prior: judgement.'
	},
	...habitAndOnce(
		{
			id: 'titrantWareWet',
			name: 'water in the titrant syringe or tip',
			class: 'technique',
			target: 'gain',
			analytes: alkalinity,
			deliveries: ['syringe', 'burette'],
			sizes: about(0.04, 0.012, 'share'),
			remedy: 'Let it dry, or draw in a little titrant and throw it away first.',
			shownBy: ['repeatFull', 'reference'],
			origin:
				'Size: 0.03 to 0.05 mL of water in a filling of 1 mL, textbook kind. Prior: judgement.'
		},
		{ habit: 0.012, once: 0.01 }
	)
];
