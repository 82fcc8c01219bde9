import type { SlipKind } from '../observation';
import type { Account } from './account';
import { STRANGE_MEQ_PER_L } from './deeds-sample';
import { askedDosesOf } from './dosing';
import { passedByLeaflet } from './passed-by-leaflet';
import type { Passed } from './titration-kind';
import { kindOf } from './titration-kind';

/**
 * What becomes of an account when one cause had not been and all else had been as it was. Each
 * touches lines of its own, so the order of mending does not matter.
 */
export type Mend = (account: Account) => Account;

const noWater = { volumeMl: 0, meqPerL: 0 };

type Chemistry = Account['chemistry'];
const withBottles = (account: Account, changed: Partial<Chemistry['bottles']>): Account =>
	withChemistry(account, { bottles: { ...account.chemistry.bottles, ...changed } });
const withChemistry = (account: Account, changed: Partial<Chemistry>): Account => ({
	...account,
	chemistry: { ...account.chemistry, ...changed }
});
const withSample = (account: Account, changed: Partial<Chemistry['sample']>): Account =>
	withChemistry(account, { sample: { ...account.chemistry.sample, ...changed } });

const withReagents = (account: Account, changed: Chemistry['bottles']['reagents']): Account =>
	withBottles(account, { reagents: { ...account.chemistry.bottles.reagents, ...changed } });

type Reagent = Account['kit']['reagents'][number];
const isIndicator = ({ role }: Reagent) => role === 'indicator';

/** The part of each that has come of what was to come. More than that came after the waiting. */
const partOf = (passed: Passed, whole: Passed, of: Passed): Passed =>
	Object.fromEntries(
		Object.entries(of).map(([what, amount]) => {
			const most = whole[what] ?? 0;
			return [what, most > 0 ? amount * Math.min(1, (passed[what] ?? 0) / most) : amount];
		})
	);

/**
 * What passes by itself where it follows the doses, when these are as they should be. Before the first
 * drop, who did not wait for it has not waited for that either; later the titrant has taken of it, and how
 * much there had been of it is no longer to be told.
 */
const asDosed =
	(mend: Mend): Mend =>
	(account) => {
		const mended = mend(account);
		if (!kindOf(account.kit).passedFollowsDoses) return mended;
		const { cleanPassed, chemistry, stoppedAtMl } = account;
		const passed =
			stoppedAtMl > 0
				? cleanPassed
				: partOf(chemistry.passed, passedByLeaflet(account), cleanPassed);
		return withChemistry(mended, { passed });
	};

/** The leaflet's own wait, on what was dosed. */
const waitedRight: Mend = (account) => {
	const { kit, chemistry } = account;
	if (!kindOf(kit).passedFollowsDoses) return swirledRight(account);
	const isAsked = kit.reagents.every(
		(reagent) => isIndicator(reagent) || chemistry.doses[reagent.id] === askedDosesOf(reagent)
	);
	const isNominal = Object.values(chemistry.bottles.reagents).every((each) => each === undefined);
	return withChemistry(account, {
		passed: isAsked && isNominal ? account.cleanPassed : passedByLeaflet(account)
	});
};

/** Half a drop past the end is what the leaflet's conversion reckons with. */
const stoppedInTime: Mend = (account) => ({ ...account, lagMl: account.kit.delivery.dropMl / 2 });
const swirledRight: Mend = (account) => withChemistry(account, { passed: account.cleanPassed });
const withoutAir: Mend = (account) => ({ ...account, airPushedMl: 0 });
const withoutStrayWater: Mend = (account) =>
	withSample(account, { displacing: noWater, adding: noWater });
const readRight: Mend = (account) => ({
	...account,
	readOff: { ...account.readOff, mistake: 0 }
});

/** With as many doses of some reagents as the leaflet asks for. */
const withAskedDoses = (account: Account, isMeant: (reagent: Reagent) => boolean): Account =>
	withChemistry(account, {
		doses: {
			...account.chemistry.doses,
			...Object.fromEntries(
				account.kit.reagents.filter(isMeant).map((reagent) => [reagent.id, askedDosesOf(reagent)])
			)
		}
	});

/** Read by the mark it was filled by: that mark then started at the full one, at each filling. */
const sameMarkTwice: Mend = (account) => {
	const { filledTo, kit, readBy } = account;
	if (readBy === 'level') return { ...account, startLevelMl: 0, miscountedRefillMl: 0 };
	if (!filledTo || kit.delivery.by !== 'syringe') return account;
	const sealMl = kit.delivery.capacityMl;
	const cushionMl = readBy === 'line' ? 0 : filledTo.cushionMl;
	return { ...account, filledTo: { sealMl, cushionMl }, miscountedRefillMl: 0 };
};

export const mends = {
	wareNotRinsed: withoutStrayWater,
	sampleOff: (account) => withSample(account, { markMl: account.nominalSampleMl, airMl: 0 }),
	indicatorOff: (account) => withAskedDoses(account, isIndicator),
	phReagentOff: asDosed((account) => withAskedDoses(account, (each) => !isIndicator(each))),
	waitOff: waitedRight,
	tipFittedLate: withoutAir,
	airExpelled: withoutAir,
	tipLoose: (account) => ({ ...account, leakedMl: 0 }),
	hangingAtStart: (account) => ({ ...account, hungAtStartMl: 0 }),
	hangingAtEnd: (account) => ({ ...account, hangingAtEndMl: 0 }),
	mixedMarks: sameMarkTwice,
	wrongRim: (account) => ({ ...account, readOff: { ...account.readOff, rim: 0 } }),
	dropperTilted: (account) => ({
		...account,
		dropFactors: { ...account.dropFactors, tilt: 1 }
	}),
	dropperSqueezed: (account) => ({
		...account,
		dropFactors: { ...account.dropFactors, squeeze: 1 }
	}),
	stoppedAtFlash: stoppedInTime,
	overshot: stoppedInTime,
	// Whoever follows the fading colour swirls on and on: both the drops and the lost CO2 are theirs.
	chasedColour: (account) => swirledRight(stoppedInTime(account)),
	wrongLight: stoppedInTime,
	swirledOddly: swirledRight,
	dropsMiscounted: readRight,
	misread: readRight,
	parallax: (account) => ({ ...account, readOff: { ...account.readOff, parallax: 0 } }),
	scaleReversed: (account) => ({ ...account, isReversed: false }),
	refillForgotten: (account) => ({ ...account, forgottenRefillMl: 0 }),
	wrongRow: (account) => ({ ...account, conversionFactor: 1 })
} satisfies Record<SlipKind, Mend>;

/** Slips that move the same line of an account: only the first of a family can own it. */
const families: readonly (readonly SlipKind[])[] = [
	['chasedColour', 'stoppedAtFlash', 'overshot', 'wrongLight'],
	['tipFittedLate', 'airExpelled'],
	['swirledOddly', 'waitOff'],
	['misread', 'dropsMiscounted']
];
export const familyOf = (kind: SlipKind): readonly SlipKind[] =>
	families.find((family) => family.includes(kind)) ?? [kind];

/**
 * Which way a slip of the stop can have missed the end, as the sign of the titrant that it added: a flash
 * explains only a stop that is short of the end, drops too many only one that is past it. A light may
 * deceive either way.
 */
const signs: Partial<Record<SlipKind, -1 | 1>> = {
	stoppedAtFlash: -1,
	overshot: 1,
	chasedColour: 1
};

/** Whether titrant that was more (above 0) or less than without a slip, mL, can be that slip's doing. */
export const canMove = (kind: SlipKind, byMl: number): boolean => (signs[kind] ?? 0) * byMl >= 0;
/** Whether a slip can be made and yet have no part in what it is about: see `canMove`. */
export const hasOneWay = (kind: SlipKind): boolean => signs[kind] !== undefined;

/**
 * Deviations that are scatter when they are too small to be called anything: a fill a hair past the
 * mark, a film of water, half a drop wiped off. Those in which the water itself has a say (its CO2)
 * are not among them. `kind` is the slip that owns the line when it was made.
 */
export const scatter: readonly { kind?: SlipKind; mend: Mend }[] = [
	...(
		[
			'wareNotRinsed',
			'sampleOff',
			'airExpelled',
			'hangingAtStart',
			'hangingAtEnd',
			'mixedMarks',
			'dropperTilted',
			'dropperSqueezed',
			'wrongRow'
		] as const
	).map((kind) => ({ kind, mend: mends[kind] })),
	{ mend: (account) => ({ ...account, wipedMl: 0 }) },
	{ mend: (account) => ({ ...account, readOff: { ...account.readOff, rounding: 0 } }) },
	{ mend: (account) => ({ ...account, dropFactors: { ...account.dropFactors, chance: 1 } }) }
];

export type WorldFault =
	| 'titrantStrength'
	| 'indicatorStrength'
	| 'baseStrength'
	| 'bufferPh'
	| 'phReagentDoses'
	| 'blockedDye'
	| 'sampleWare'
	| 'dropSize'
	| 'grains'
	| 'strayWater'
	| 'stickySeal';

/** Alkalinity of strange water beyond what any rinse leaves: something stood in the ware, mmol. */
const strangeMmol = ({ chemistry }: Account) =>
	[chemistry.sample.displacing, chemistry.sample.adding].reduce(
		(sum, { volumeMl, meqPerL }) =>
			sum + (Math.abs(meqPerL) > STRANGE_MEQ_PER_L ? volumeMl * meqPerL : 0),
		0
	) / 1000;

/** Faults of the world, not of the hands, and what becomes of the account without each. */
export const worldFaults: {
	id: WorldFault;
	isThere: (account: Account) => boolean;
	mend: Mend;
	/** A slip that, when it was made, owns the same line. */
	ownedBy?: SlipKind;
}[] = [
	{
		id: 'titrantStrength',
		isThere: ({ chemistry, kit }) => chemistry.titrantMolPerL !== kit.contents?.titrant.molPerL,
		mend: (account) =>
			withChemistry(account, {
				titrantMolPerL: account.kit.contents?.titrant.molPerL ?? account.chemistry.titrantMolPerL
			})
	},
	{
		id: 'indicatorStrength',
		isThere: ({ chemistry }) => chemistry.bottles.indicatorFactor !== 1,
		mend: (account) => withBottles(account, { indicatorFactor: 1 })
	},
	{
		id: 'baseStrength',
		isThere: ({ chemistry }) => chemistry.bottles.reagents.base !== undefined,
		mend: asDosed((account) => withReagents(account, { base: undefined }))
	},
	{
		id: 'bufferPh',
		isThere: ({ chemistry }) => chemistry.bottles.reagents.ammoniaBuffer !== undefined,
		mend: asDosed((account) => withReagents(account, { ammoniaBuffer: undefined }))
	},
	{
		id: 'phReagentDoses',
		isThere: (account) =>
			account.kit.reagents.some(
				(reagent) =>
					!isIndicator(reagent) &&
					(account.chemistry.doses[reagent.id] ?? 0) !== askedDosesOf(reagent)
			),
		mend: mends.phReagentOff,
		ownedBy: 'phReagentOff'
	},
	{
		id: 'blockedDye',
		isThere: ({ chemistry }) => chemistry.water.blockingMicromolPerL > 0,
		mend: (account) =>
			withChemistry(account, { water: { ...account.chemistry.water, blockingMicromolPerL: 0 } })
	},
	{
		id: 'sampleWare',
		isThere: ({ chemistry }) => chemistry.sample.wareFactor !== 1,
		mend: (account) => withSample(account, { wareFactor: 1 })
	},
	{
		id: 'dropSize',
		isThere: ({ dropFactors, readBy }) => readBy === 'drops' && dropFactors.own !== 1,
		mend: (account) => ({ ...account, dropFactors: { ...account.dropFactors, own: 1 } })
	},
	{
		id: 'grains',
		isThere: ({ chemistry }) => chemistry.grainsMol > 0,
		mend: (account) => withChemistry(account, { grainsMol: 0 })
	},
	{
		id: 'strayWater',
		isThere: (account) => strangeMmol(account) !== 0,
		mend: withoutStrayWater,
		ownedBy: 'wareNotRinsed'
	},
	{
		id: 'stickySeal',
		isThere: ({ sealSticks, lagMl, kit }) => sealSticks && lagMl > kit.delivery.dropMl,
		mend: stoppedInTime
	}
];
