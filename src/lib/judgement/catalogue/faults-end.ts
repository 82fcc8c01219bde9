import { endPointEffects as found } from './end-point-effects';
import type { Fault } from './fault';
import { about, alkalinity, eitherWay, habitAndOnce, mixed } from './make-fault';

/** What can go astray between the first drop and the colour that is called the end. */
export const endFaults: readonly Fault[] = [
	...habitAndOnce(
		{
			id: 'stoppedAtFlash',
			name: 'stopped at a colour that did not stay',
			class: 'technique',
			target: 'endPoint',
			analytes: alkalinity,
			sizes: about(-2.2, 1, 'drops'),
			remedy: 'Swirl after each drop. The end is the first colour that lasts about half a minute.',
			shownBy: ['repeatFull', 'otherHands', 'reference'],
			origin: 'Size: common practice, no source, one to four drops early. Prior: judgement.'
		},
		{ habit: 0.02, once: 0.035 }
	),
	{
		id: 'overshot',
		name: 'more than one drop at the end',
		class: 'technique',
		target: 'constant',
		scope: 'oneTest',
		analytes: alkalinity,
		sizes: about(1.5, 0.7, 'drops'),
		prior: 0.035,
		remedy: 'One drop at a time as soon as a flash takes three seconds to fade.',
		shownBy: ['repeatFull', 'repeatQuick'],
		origin: 'Textbook: the drops too many. Prior: judgement.'
	},
	{
		id: 'hangingAtEnd',
		name: 'a drop left hanging at the end',
		class: 'technique',
		target: 'constant',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: ['syringe', 'burette'],
		sizes: about(0.7, 0.3, 'drops'),
		prior: 0.03,
		remedy: 'Touch the tip to the glass, swirl, look again; then read.',
		shownBy: ['repeatFull'],
		origin: 'Textbook: up to one drop. Prior: judgement.'
	},
	{
		id: 'otherShade',
		name: 'another shade taken for the end',
		class: 'technique',
		target: 'endPoint',
		scope: 'hands',
		analytes: alkalinity,
		// Which shade is taken instead spreads it further than kits and alkalinities do.
		sizes: mixed(
			'customaryUnit',
			[0.7, found.fullRoseForMauve.mean, 0.1],
			[0.3, found.violetForMauve.mean, 0.06]
		),
		prior: 0.035,
		remedy:
			'Keep a vial at the end colour beside it, and take the same shade each time. In seawater it goes through violet and mauve, not grey.',
		shownBy: ['reference', 'otherHands'],
		origin:
			'Size: computed, end colours from violet to rose on the practice bench. Prior: judgement.'
	},
	{
		id: 'chasedColour',
		name: 'followed the colour as it faded again',
		class: 'technique',
		target: 'endPoint',
		scope: 'hands',
		analytes: alkalinity,
		// Carbon dioxide can move it no further; a hand that has begun to add often goes on to a fuller colour.
		sizes: mixed(
			'customaryUnit',
			[0.6, found.chasedColour.mean, found.chasedColour.sd],
			[0.4, found.chasedColour.mean + found.fullRoseForMauve.mean, 0.15]
		),
		prior: 0.05,
		remedy:
			'Take the first colour that lasts half a minute. Later it fades as carbon dioxide leaves.',
		shownBy: ['otherHands', 'reference'],
		origin:
			'Size: computed, a fading colour answered with drops on the practice bench, to the same and to a fuller colour; shares of the two and prior: judgement.'
	},
	{
		id: 'swirledOddly',
		name: 'swirled far less, or far more, than usual',
		class: 'technique',
		target: 'endPoint',
		scope: 'hands',
		analytes: alkalinity,
		sizes: mixed(
			'customaryUnit',
			[0.6, found.stillVial.mean, found.stillVial.sd],
			[0.4, found.shakenVial.mean, found.shakenVial.sd]
		),
		prior: 0.025,
		remedy: 'The same gentle swirl of about two seconds after every drop near the end.',
		shownBy: ['otherHands', 'reference'],
		origin: 'Size: computed, still and shaken vials on the practice bench. Prior: judgement.'
	},
	{
		id: 'otherLight',
		name: 'end judged in blue or dim light',
		class: 'technique',
		target: 'endPoint',
		scope: 'hands',
		analytes: alkalinity,
		sizes: eitherWay(0.6, 0.25, 'customaryUnit', 0.6),
		prior: 0.045,
		remedy: 'White light and a white card, away from the tank’s own lamps.',
		shownBy: ['repeatFull', 'reference'],
		origin: 'Common practice, no source, for size and for being the commonest of all.'
	},
	{
		id: 'redGreenSight',
		name: 'red and green hard to tell apart',
		class: 'technique',
		target: 'endPoint',
		scope: 'hands',
		analytes: alkalinity,
		sizes: about(0.22, 0.08, 'customaryUnit'),
		prior: 0.012,
		remedy: 'Make your own end colour beside it, under a red lamp, or let someone else look.',
		shownBy: ['otherHands', 'reference'],
		origin:
			'Size: judgement, from simulated sight only. Prior: about 1 in 20 of all people (textbook), judged to matter for 1 in 4 of them.'
	},
	{
		id: 'indicatorDose',
		name: 'another number of indicator drops',
		class: 'technique',
		target: 'endPoint',
		scope: 'oneTest',
		analytes: alkalinity,
		sizes: about(0, 0.12, 'customaryUnit'),
		prior: 0.02,
		remedy: 'Count aloud. It changes the depth of the colour more than the value.',
		shownBy: ['repeatFull'],
		origin:
			'Size: computed, half or twice the indicator moves the end by hundredths only; the eye led astray by a paler or deeper colour and prior: judgement.'
	},
	{
		id: 'unsteadyHands',
		name: 'tests fall wider apart than usual',
		class: 'technique',
		target: 'scatter',
		scope: 'hands',
		analytes: alkalinity,
		sizes: about(2.5, 0.5, 'timesScatter'),
		prior: 0.03,
		remedy: 'Do the last drops singly, and read twice. Three tests say more than one.',
		shownBy: ['repeatFull', 'otherHands'],
		origin: 'Judgement.'
	},
	{
		id: 'dropperTilted',
		name: 'bottle held at a slant',
		class: 'technique',
		target: 'gain',
		scope: 'hands',
		analytes: alkalinity,
		deliveries: ['dropper'],
		sizes: about(0.09, 0.03, 'share'),
		prior: 0.05,
		remedy: 'Hold it straight down: slanted drops are smaller, so more of them are counted.',
		shownBy: ['weighTitrantWare', 'otherHands'],
		origin: 'Size: textbook, 5 to 15 in a hundred. Prior: judgement.'
	},
	{
		id: 'dropperSqueezed',
		name: 'bottle squeezed hard, or nozzle wet',
		class: 'technique',
		target: 'gain',
		scope: 'hands',
		analytes: alkalinity,
		deliveries: ['dropper'],
		sizes: about(-0.075, 0.025, 'share'),
		prior: 0.035,
		remedy: 'Press gently, let each drop fall by itself, and wipe the nozzle.',
		shownBy: ['weighTitrantWare', 'otherHands'],
		origin: 'Size: textbook, 5 to 10 in a hundred. Prior: judgement.'
	}
];
