import type { Slip, SlipKind } from '../observation';
import type { Remark, Remarker, TankSight } from './tank-remark';
import { costOf } from './tank-sight';
import { slipsAtTank } from './tank-slips';

type Told = (sight: TankSight, slip: Slip) => Omit<Remark, 'id'>;

/** Slips of judgement about the end, in words for real hands; told when the end has been declared. */
const told: Partial<Record<SlipKind, Told>> = {
	stoppedAtFlash: ({ kit }, { variant }) => ({
		tone: 'warn',
		text:
			variant === 'notSwirled'
				? 'The end was taken before a swirl: it may have been a flash, and read low.'
				: `The end was taken sooner than ${kit.endPoint.holdsSeconds} s: it may have been a flash, and read low.`,
		offers: ['freshSample']
	}),
	overshot: (sight, { drops }) => ({
		tone: 'warn',
		text: `The last drops went in at once: the end may lie up to ${drops} earlier.`,
		...costOf(sight, (drops ?? 1) * sight.kit.delivery.dropMl)
	}),
	chasedColour: () => ({
		tone: 'warn',
		text: 'The colour had stayed once, and drops followed. The first that stayed was the end.',
		offers: ['freshSample']
	}),
	swirledOddly: () => ({
		tone: 'say',
		text: 'Swirled very long: carbon dioxide leaves, and the colour goes back. Two seconds a drop do.'
	}),
	wrongLight: (_sight, { variant }) => ({
		tone: 'warn',
		text: `The end was judged in ${variant} light. Look at the vial again in white light.`,
		offers: ['whiteLight', 'freshSample']
	}),
	hangingAtEnd: (sight, { sizeMl }) => ({
		tone: 'warn',
		text: 'A drop was left hanging at the end: it counts as used and never fell in.',
		...costOf(sight, sizeMl ?? sight.kit.delivery.dropMl)
	}),
	dropperTilted: () => ({
		tone: 'warn',
		text: 'The bottle was held at a slant: its drops are smaller, so that it reads high.'
	}),
	dropperSqueezed: () => ({
		tone: 'warn',
		text: 'Squeezed hard, drops are larger, so that it reads low.'
	})
};

/** What the drops and their end show: of judgement only when the end has been declared. */
export const endRemarks: Remarker = (sight) => {
	const { titration, circumstances, isPast } = sight;
	return slipsAtTank(titration, circumstances).flatMap((slip): Remark[] => {
		const tell = told[slip.kind];
		const isAtDrops = sight.step?.kind === 'titrate' && slip.nature === 'handling';
		return tell && (isAtDrops || isPast('titrate'))
			? [{ id: `end.${slip.kind}`, ...tell(sight, slip) }]
			: [];
	});
};
