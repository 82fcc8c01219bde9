import { stepsOf } from '../kits';
import type { SlipKind } from '../observation';
import type { Account } from './account';
import { cleanCarbonKept } from './calibrate';

/**
 * What becomes of an account when one slip had not been made and all else had been as it was.
 * Each touches lines of its own, so the order of mending does not matter.
 */
type Mend = (account: Account) => Account;

const noWater = { volumeMl: 0, meqPerL: 0 };

const atCleanStop: Mend = (account) => ({ ...account, lagMl: account.kit.delivery.dropMl / 2 });
const withoutAir: Mend = (account) => ({ ...account, airPushedMl: 0 });
const readRight: Mend = (account) => ({
	...account,
	readOff: { ...account.readOff, mistake: 0 }
});

const heldUpright: Mend = (account) => ({
	...account,
	dropFactors: { ...account.dropFactors, hand: 1 }
});

export const mends = {
	wareNotRinsed: (account) => ({
		...account,
		chemistry: {
			...account.chemistry,
			sample: { ...account.chemistry.sample, displacing: noWater, adding: noWater }
		}
	}),
	sampleOff: (account) => ({
		...account,
		chemistry: {
			...account.chemistry,
			sample: { ...account.chemistry.sample, markMl: account.nominalSampleMl, airMl: 0 }
		}
	}),
	indicatorOff: (account) => ({
		...account,
		chemistry: {
			...account.chemistry,
			doses: Object.fromEntries(
				stepsOf(account.kit).flatMap((step) =>
					step.kind === 'dose' ? [[step.reagentId, step.unit === 'mL' ? 1 : step.amount]] : []
				)
			)
		}
	}),
	tipFittedLate: withoutAir,
	airExpelled: withoutAir,
	tipLoose: (account) => ({ ...account, leakedMl: 0 }),
	hangingAtStart: (account) => ({ ...account, hungAtStartMl: 0 }),
	hangingAtEnd: (account) => ({ ...account, hangingAtEndMl: 0 }),
	/** Read by the mark it was filled by: the seal then starts at the full mark. */
	mixedMarks: (account) => {
		const { filledTo, kit } = account;
		if (!filledTo || kit.delivery.by !== 'syringe') return account;
		return account.readBy === 'seal'
			? { ...account, filledTo: { ...filledTo, sealMl: kit.delivery.capacityMl } }
			: { ...account, filledTo: { ...filledTo, cushionMl: 0 } };
	},
	wrongRim: (account) => ({ ...account, readOff: { ...account.readOff, rim: 0 } }),
	dropperTilted: heldUpright,
	dropperSqueezed: heldUpright,
	stoppedAtFlash: atCleanStop,
	overshot: atCleanStop,
	chasedColour: atCleanStop,
	wrongLight: atCleanStop,
	swirledOddly: (account) => ({
		...account,
		chemistry: { ...account.chemistry, carbonKept: cleanCarbonKept() }
	}),
	dropsMiscounted: readRight,
	misread: readRight,
	parallax: (account) => ({ ...account, readOff: { ...account.readOff, parallax: 0 } }),
	scaleReversed: (account) => ({ ...account, isReversed: false }),
	wrongRow: (account) => ({ ...account, conversionFactor: 1 })
} satisfies Record<SlipKind, Mend>;

/** Faults of the world, not of the hands: what each would have cost nothing, had it not been. */
export const worldFaults: {
	id: WorldFault;
	isThere: (account: Account) => boolean;
	mend: (account: Account) => Account;
}[] = [
	{
		id: 'titrantStrength',
		isThere: ({ chemistry, kit }) => chemistry.titrantMolPerL !== kit.contents?.titrant.molPerL,
		mend: (account) => ({
			...account,
			chemistry: {
				...account.chemistry,
				titrantMolPerL: account.kit.contents?.titrant.molPerL ?? account.chemistry.titrantMolPerL
			}
		})
	},
	{
		id: 'indicatorStrength',
		isThere: ({ chemistry }) => chemistry.indicatorFactor !== 1,
		mend: (account) => ({
			...account,
			chemistry: { ...account.chemistry, indicatorFactor: 1 }
		})
	},
	{
		id: 'sampleWare',
		isThere: ({ chemistry }) => chemistry.sample.wareFactor !== 1,
		mend: (account) => ({
			...account,
			chemistry: {
				...account.chemistry,
				sample: { ...account.chemistry.sample, wareFactor: 1 }
			}
		})
	},
	{
		id: 'dropSize',
		isThere: ({ dropFactors, readBy }) => readBy === 'drops' && dropFactors.own !== 1,
		mend: (account) => ({ ...account, dropFactors: { ...account.dropFactors, own: 1 } })
	},
	{
		id: 'grains',
		isThere: ({ chemistry }) => chemistry.grainsMol > 0,
		mend: (account) => ({ ...account, chemistry: { ...account.chemistry, grainsMol: 0 } })
	}
];
export type WorldFault =
	'titrantStrength' | 'indicatorStrength' | 'sampleWare' | 'dropSize' | 'grains';
