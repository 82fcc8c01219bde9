import { createBench, kindOf, PlanSchema, runHands, TruthSchema } from '../../src/lib/bench';
import type { BenchState, HandsRun, Ledger, Plan, Truth, VialContents } from '../../src/lib/bench';
import type { Vessel } from '../../src/lib/chemistry';
import { houseKitOf, valueFromMark, type Kit } from '../../src/lib/kits';
import type { Slip, SlipKind } from '../../src/lib/observation';
import type * as z from 'zod/mini';

export const syringeKit = houseKitOf('house-syringe');
export const dropperKit = houseKitOf('house-dropper');
export const buretteKit = houseKitOf('house-burette');

/** A truth that is ordinary (8 dKH) in whatever is left out. */
export function truthOf(
	different: Omit<z.input<typeof TruthSchema>, 'water'> & {
		water?: Partial<z.input<typeof TruthSchema>['water']>;
	} = {}
): Truth {
	return TruthSchema.parse({ ...different, water: { alkalinityDkh: 8, ...different.water } });
}

export const benchWith = (kit: Kit, truth: Truth = truthOf(), seed = 1): BenchState =>
	createBench({ kit, truth, seed });

export function worked(
	kit: Kit,
	plan: z.input<typeof PlanSchema> = {},
	truth: Truth = truthOf(),
	seed = 1
): HandsRun & { value: number } {
	const run = runHands(benchWith(kit, truth, seed), PlanSchema.parse(plan) as Plan);
	return { ...run, value: valueOf(kit, run) };
}

export function valueOf(kit: Kit, { marks, sampleVolumeMl }: HandsRun): number {
	return valueFromMark(kit, {
		markMl: marks.sealMl ?? marks.lineMl ?? marks.levelMl,
		drops: marks.drops,
		sampleVolumeMl
	}).value;
}

export const slipOf = (kind: SlipKind, more: Partial<Slip> = {}): Slip => ({
	kind,
	nature: 'handling',
	entryId: 'e1',
	provisional: false,
	...more
});

/** Contents of a titration with acid, seen from inside. */
export function acidIn(contents: VialContents | null): Vessel {
	if (!contents) throw new Error('there is nothing in the vial');
	return contents as unknown as Vessel;
}
export const asContents = (vessel: Vessel) => vessel as unknown as VialContents;
/** How far the colour of a titration with acid has come, as a hue angle that only grows. */
export const hueOnTheWay = (contents: VialContents) => kindOf(syringeKit).placeOnTheWay(contents);

/** Amount of one line of a ledger, in its kit's unit; an error when it is not there. */
export function lineOf(ledger: Ledger, id: string): number {
	const line = ledger.lines.find((each) => each.id === id);
	if (!line) throw new Error(`no line ${id} among ${ledger.lines.map((each) => each.id).join()}`);
	return line.amount;
}

/** Mean over seeds of one number. */
export function meanOver(seeds: number, numberOf: (seed: number) => number): number {
	let sum = 0;
	for (let seed = 1; seed <= seeds; seed++) sum += numberOf(seed);
	return sum / seeds;
}
