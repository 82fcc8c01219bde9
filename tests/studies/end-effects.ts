import {
	addIndicator,
	fillVessel,
	molPerKgFromDkh,
	type Matrix,
	type Vessel
} from '../../src/lib/chemistry';
import {
	cleanEnd,
	createBench,
	endVolumeMl,
	kindOf,
	PlanSchema,
	runHands,
	TruthSchema,
	WaterSchema,
	type BenchState,
	type Passed,
	type Plan,
	type VialContents
} from '../../src/lib/bench';
import { houseKitsFor, valueFromMark, type Kit } from '../../src/lib/kits';

/**
 * What moves the end of a titration and is neither a share of the value nor a volume: found on the
 * practice bench with the house kits and several alkalinities, as the change of the value that the
 * leaflet then gives.
 */

/** Where tanks lie, dKH. */
export const ALKALINITIES = [5, 8, 12] as const;
/** Where a whole drop happens to fall matters to a chase alone. */
const SEEDS = [1, 2, 3, 4];

type Case = { kit: Kit; alkalinityDkh: number };
const cases: Case[] = houseKitsFor('alkalinity').flatMap((kit) =>
	ALKALINITIES.map((alkalinityDkh) => ({ kit, alkalinityDkh }))
);

const nominalMl = (kit: Kit) => kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
/** Slope of the leaflet in the middle of its reach. */
function valuePerMl(kit: Kit): number {
	const middle =
		kit.delivery.by === 'dropper' ? { drops: 15 } : { markMl: kit.delivery.capacityMl / 2 };
	return valueFromMark(kit, { ...middle, sampleVolumeMl: nominalMl(kit) }).valuePerMl;
}
const ordinary = (alkalinityDkh: number, more: Record<string, unknown> = {}) =>
	WaterSchema.parse({ alkalinityDkh, ...more });

function endMl(kit: Kit, water: ReturnType<typeof ordinary>): number {
	const end = cleanEnd(kit, water).endMl;
	if (end === null) throw new Error('no end to see');
	return end;
}

/** End of a sample once so much has passed in it. */
function endOf(kit: Kit, sample: VialContents | null, passed: Passed): number {
	const molPerL = kit.contents?.titrant.molPerL ?? Number.NaN;
	const end = sample && endVolumeMl(kit, kindOf(kit).withPassed(sample, passed), molPerL);
	if (end === null) throw new Error('no end to see');
	return end;
}
const asContents = (vessel: Vessel) => vessel as unknown as VialContents;

/** Another kit or another water, to the same end as a clean hand's. */
const chemical =
	(change: (each: Case) => { kit?: Kit; water?: Record<string, unknown> }) => (each: Case) => {
		const { kit = each.kit, water = {} } = change(each);
		const moved =
			endMl(kit, ordinary(each.alkalinityDkh, water)) -
			endMl(each.kit, ordinary(each.alkalinityDkh));
		return moved * valuePerMl(each.kit);
	};

const withHue = (degrees: number) =>
	chemical(({ kit }) => ({
		kit: { ...kit, endPoint: { ...kit.endPoint, hueDegrees: degrees } }
	}));
const withIndicator = (times: number, alsoVolume: boolean) =>
	chemical(({ kit }) => ({
		kit: {
			...kit,
			reagents: kit.reagents.map((reagent) => ({
				...reagent,
				dose: { ...reagent.dose, amount: reagent.dose.amount * (alsoVolume ? times : 1) }
			})),
			contents: kit.contents && {
				...kit.contents,
				dyes: Object.fromEntries(
					Object.entries(kit.contents.dyes).map(([id, dyes]) => [
						id,
						dyes.map((dye) => ({ ...dye, molPerL: dye.molPerL * (alsoVolume ? 1 : times) }))
					])
				)
			}
		}
	}));

/**
 * A known solution against seawater of the same content, to the same hue with the same swirling.
 *
 * @param carbonPerAlkalinity mol of carbon for each mol of alkalinity: 1 for bicarbonate, a half for
 *   carbonate
 */
const solution =
	(matrix: Matrix, salinity: number, carbonPerAlkalinity: number) => (each: Case) => {
		const { kit, alkalinityDkh } = each;
		const water = ordinary(alkalinityDkh, { matrix, salinity });
		const alkalinityMolPerKg = molPerKgFromDkh(alkalinityDkh, densityOf(matrix, salinity));
		let vessel: Vessel = fillVessel({
			matrix,
			salinity,
			temperatureC: 25,
			alkalinityMolPerKg,
			dicMolPerKg: alkalinityMolPerKg * carbonPerAlkalinity,
			volumeMl: nominalMl(kit)
		});
		for (const { id, dose } of kit.reagents)
			vessel = addIndicator(vessel, {
				volumeMl: dose.amount * (dose.unitMl ?? Number.NaN),
				dyes: kit.contents?.dyes[id] ?? []
			});
		const end = endOf(kit, asContents(vessel), cleanEnd(kit, water).passed);
		return (end - endMl(kit, ordinary(alkalinityDkh))) * valuePerMl(kit);
	};
function densityOf(matrix: Matrix, salinity: number): number {
	const probe = fillVessel({
		matrix,
		salinity,
		temperatureC: 25,
		alkalinityMolPerKg: 0,
		dicMolPerKg: 0,
		volumeMl: 1000
	});
	return probe.massKg;
}

const known = new Map<string, BenchState>();
function run({ kit, alkalinityDkh }: Case, seed: number, plan: Partial<Plan>): BenchState {
	const key = JSON.stringify([kit.id, alkalinityDkh, seed, plan]);
	const before = known.get(key);
	if (before) return before;
	const truth = TruthSchema.parse({ water: { alkalinityDkh } });
	const { state } = runHands(createBench({ kit, truth, seed }), PlanSchema.parse(plan));
	known.set(key, state);
	return state;
}
const meanOfSeeds = (of: (seed: number) => number) =>
	SEEDS.reduce((sum, seed) => sum + of(seed), 0) / SEEDS.length;

/** Other swirling: the end lies elsewhere, whatever drop falls there. */
const withSwirl = (swirlMs: number) => (each: Case) => {
	const { kit } = each;
	const endAfter = (seed: number, plan: Partial<Plan>) => {
		const { contents, sampleContents } = run(each, seed, plan);
		return endOf(kit, sampleContents, kindOf(kit).passedBetween(sampleContents, contents));
	};
	// Carbon hardly differs between seeds: one is enough.
	return valuePerMl(kit) * (endAfter(1, { swirlMs }) - endAfter(1, {}));
};
/** As far as a fading colour can be followed: carbon dioxide gone but for a rest. */
const carbonGone = (carbonKept: number) => (each: Case) => {
	const { kit, alkalinityDkh } = each;
	const end = endOf(kit, run(each, 1, {}).sampleContents, { carbonKept });
	return (end - endMl(kit, ordinary(alkalinityDkh))) * valuePerMl(kit);
};
/** A fading colour answered with drops: whole drops, as they fall. */
const chased = (chaseRounds: number) => (each: Case) =>
	valuePerMl(each.kit) *
	meanOfSeeds((seed) => run(each, seed, { chaseRounds }).inVialMl - run(each, seed, {}).inVialMl);

const effects: Record<string, (each: Case) => number> = {
	stillVial: withSwirl(0),
	shakenVial: withSwirl(10_000),
	chasedColour: chased(8),
	carbonGone: carbonGone(0.05),
	violetForMauve: withHue(320),
	roseForMauve: withHue(360),
	fullRoseForMauve: withHue(368),
	indicatorDoubled: withIndicator(2, true),
	indicatorHalved: withIndicator(0.5, true),
	indicatorPale: withIndicator(0.4, false),
	salinity30: chemical(() => ({ water: { salinity: 30 } })),
	salinity40: chemical(() => ({ water: { salinity: 40 } })),
	bicarbonateInPurified: solution('purified', 0, 1),
	carbonateInPurified: solution('purified', 0, 0.5),
	bicarbonateInSodiumChloride: solution('sodiumChloride', 35, 1),
	carbonateInSodiumChloride: solution('sodiumChloride', 35, 0.5)
};

export type EffectRow = {
	mean: number;
	sd: number;
	least: number;
	most: number;
	byDkh: number[];
};
const toThousandths = (value: number) => Number(value.toFixed(3)) + 0;

/** All effects, dKH, to a thousandth. */
export function studyEffects(): Record<string, EffectRow> {
	return Object.fromEntries(
		Object.entries(effects).map(([id, effect]) => {
			const found = cases.map((each) => ({ ...each, dkh: effect(each) }));
			const all = found.map(({ dkh }) => dkh);
			const mean = (numbers: readonly number[]) =>
				numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
			const middle = mean(all);
			const row = {
				mean: middle,
				sd: Math.sqrt(mean(all.map((each) => (each - middle) ** 2))),
				least: Math.min(...all),
				most: Math.max(...all)
			};
			return [
				id,
				{
					mean: toThousandths(row.mean),
					sd: toThousandths(row.sd),
					least: toThousandths(row.least),
					most: toThousandths(row.most),
					byDkh: ALKALINITIES.map((dkh) =>
						toThousandths(
							mean(found.filter((each) => each.alkalinityDkh === dkh).map((e) => e.dkh))
						)
					)
				}
			];
		})
	);
}
