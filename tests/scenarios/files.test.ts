import { describe, expect, it } from 'vitest';
import { trueValueOf, type Scenario, type Water } from '../../src/lib/bench';
import { houseKitOf, houseKits, titrantOf, titrationKinds, worthOf } from '../../src/lib/kits';
import { conclusions, slipKinds, type SlipKind } from '../../src/lib/observation';
import { drillFor, trainsOf, type ToTrain } from '../../src/lib/procedure';
import { cases, drills, scenarios } from './house';

const sentences = (text: string) =>
	text.split(/[.?!](?:\s|$)/).filter((part) => part.trim()).length;

describe.each(scenarios)('$file', ({ file, scenario }) => {
	it('is named as it calls itself, and is for a kit that there is', () => {
		expect(file).toBe(`${scenario.id}.json`);
		expect(houseKits.map((kit) => kit.id)).toContain(scenario.kitId);
	});
	it('tells its situation in two to four sentences', () => {
		expect(sentences(scenario.opening)).toBeGreaterThanOrEqual(2);
		expect(sentences(scenario.opening)).toBeLessThanOrEqual(4);
	});
});

const isWithEdta = ({ kitId }: Scenario) => titrantOf[houseKitOf(kitId).analyte].kind === 'edta';
const training = drills.map((drill) => ({ ...drill, trains: trainsOf(drill.scenario) }));
const drillOf = (train: ToTrain) => drillFor(training, train);
/** A leaflet of alkalinity asks for nothing that makes the pH, and for no wait. */
const onlyWithEdta: ReadonlySet<SlipKind> = new Set(['phReagentOff', 'waitOff']);

describe('drills', () => {
	it('are at least six, and each practises slips that are known', () => {
		expect(drills.length).toBeGreaterThanOrEqual(6);
		for (const { scenario } of drills) {
			expect(scenario.skills.length).toBeGreaterThan(0);
			for (const skill of scenario.skills) expect(slipKinds).toContain(skill);
		}
	});
	it('train between them every slip, each with acid or in the titration in which alone it is made', () => {
		for (const slip of slipKinds) {
			const titrations = titrationKinds.filter((titration) => drillOf({ slip, titration }));
			expect(titrations, slip).toContain(onlyWithEdta.has(slip) ? 'edta' : 'strongAcid');
		}
	});
	it('say of what they train elsewhere only what they are about', () => {
		for (const { file, scenario } of drills)
			for (const { skills } of scenario.alsoTrains)
				for (const skill of skills) expect(scenario.skills, file).toContain(skill);
	});
	it('of calcium and magnesium are each led to from some slip of these titrations', () => {
		const ledTo = new Set(
			slipKinds.map((slip) => drillOf({ slip, titration: 'edta' })?.scenario.id)
		);
		const metals = drills.filter(({ scenario }) => isWithEdta(scenario));
		expect(metals.length).toBeGreaterThanOrEqual(4);
		for (const { scenario } of metals) expect(ledTo).toContain(scenario.id);
	});
	it.each([
		['stoppedAtFlash', 'purple-or-blue', 'flash-or-stays'],
		['overshot', 'slow-in-the-cold', 'single-drops'],
		['indicatorOff', 'drops-of-base', 'take-the-sample'],
		['sampleOff', 'take-the-sample', 'take-the-sample'],
		['refillForgotten', 'fill-again', 'fill-again'],
		['wrongLight', undefined, 'white-light'],
		['swirledOddly', undefined, 'flash-or-stays']
	] as const)('for %s lead to %s with EDTA, with acid to %s', (slip, withEdta, withAcid) => {
		expect(drillOf({ slip, titration: 'edta' })?.scenario.id).toBe(withEdta);
		expect(drillOf({ slip, titration: 'strongAcid' })?.scenario.id).toBe(withAcid);
	});
	it('ask for no verdict', () => {
		for (const { scenario } of drills) {
			expect(scenario.verdict).toBeUndefined();
			expect(scenario.checks).toEqual([]);
		}
	});
	it('that end before a value are short', () => {
		for (const { scenario } of drills)
			if ((scenario.until ?? 'read') !== 'read') expect(scenario.minutes).toBeLessThanOrEqual(3);
	});
});

/** Words from which a cause could be guessed before anything was checked. */
const telling =
	/\b(acid|cushion|liquid|seal|tip|bubbles?|flash|unmixed|swirl\w*|evaporat\w*|strong|weak|hydrate|soda|borate|sludge|outlet|grains?|sand|film|fingerprint|empty|reversed|other end|line|wrong\w*|faults?|mistakes?|slips?|technique|errors?|reagents?|matrix|titrant|off|carbonated|carried|refill\w*|forg[eo]t\w*|precipit\w*|purple|copper|worked out)\b/i;

describe('cases', () => {
	it('are at least twelve, each with a verdict, what was the matter, and two checks or more', () => {
		expect(cases.length).toBeGreaterThanOrEqual(12);
		for (const { file, scenario } of cases) {
			expect(scenario.verdict, file).toBeDefined();
			expect(scenario.reveal?.length ?? 0, file).toBeGreaterThan(80);
			expect(new Set(scenario.checks.map((offer) => offer.check)).size, file).toBe(
				scenario.checks.length
			);
			expect(scenario.checks.length, file).toBeGreaterThanOrEqual(2);
		}
	});
	it.each(cases)('$file does not give its cause away before the conclusion', ({ scenario }) => {
		const offers = scenario.checks.flatMap((offer) =>
			'label' in offer ? [offer.label, offer.note ?? ''] : []
		);
		// The packet of one solution may say what is in it: whoever reads it has found something out.
		const shown = offers.map((words) => words.replace('The packet says soda', ''));
		const ordinary = scenario.opening.replace('the top-off', '');
		const beside = [...scenario.record, ...(scenario.takenOff ? [scenario.takenOff] : [])];
		shown.push(...beside.map(({ label }) => label));
		for (const words of [scenario.id, scenario.title, ordinary, ...shown])
			expect(words).not.toMatch(telling);
	});
	it('the list of telling words does catch a title that tells', () => {
		for (const title of ['The evaporated bottle', 'Filled by the line', 'A flash in the vial'])
			expect(title).toMatch(telling);
	});

	it('have nothing wrong in about one of four', () => {
		const sound = cases.filter(({ scenario }) => isSound(scenario));
		expect(sound.length / cases.length).toBeGreaterThanOrEqual(0.2);
		expect(sound.length / cases.length).toBeLessThanOrEqual(0.3);
		for (const { file, scenario } of sound) expect(scenario.verdict, file).toBe('stands');
	});
	it('come to every conclusion there is', () => {
		expect(new Set(cases.map(({ scenario }) => scenario.verdict))).toEqual(new Set(conclusions));
	});
	it('say nothing that nobody can promise', () => {
		for (const { file, scenario } of scenarios)
			for (const words of [scenario.opening, scenario.reveal ?? ''])
				expect(words, file).not.toMatch(
					/your reading is correct|safe dose|guaranteed|always right|certain(ly)?\b|100 %|(good|bad) kit/i
				);
	});
});

/** By how much contents of two waters differ, as this kit finds them, against what it can claim: judgement. */
const UNLIKE_DROPS = 2;

/** Nothing in this world is off: water as before, bottles, ware, hands and methods as they should be. */
function isSound({ truth, checks, earlier, verdict, kitId, takenOff }: Scenario): boolean {
	const kit = houseKitOf(kitId);
	const unlike = UNLIKE_DROPS * (worthOf(kit)[0]?.dropValue ?? 0);
	const contentOf = (water: Water) => trueValueOf(water, kit);
	const { water: tank } = truth;
	const ordinaryWater =
		tank.matrix === 'seawater' &&
		tank.carbonateGrainsMg === 0 &&
		tank.haze === 0 &&
		tank.blockingMicromolPerL === 0 &&
		earlier.every(({ water }) => !water || Math.abs(contentOf(water) - contentOf(tank)) < unlike);
	const ordinaryHands = earlier.every(({ hands: { fillBy, readBy, ...hands } }) => {
		const isEven = fillBy === readBy;
		return (
			isEven &&
			!hands.scaleReversed &&
			!hands.refillsForgotten &&
			hands.tipFitted === 'before' &&
			hands.dropsPastEnd === 0
		);
	});
	const methods = checks.every((offer) => {
		if ('offset' in offer) return Math.abs(offer.offset) <= offer.expandedUncertainty;
		return (
			offer.check !== 'reference' ||
			Math.abs(contentOf(offer.water) - offer.nominal) <= offer.nominalExpandedUncertainty
		);
	});
	const bottles = !truth.titrant && !truth.indicator && !truth.ware && !truth.reagents;
	const taken = !takenOff || isTakenSound(takenOff, tank);
	return verdict !== undefined && ordinaryWater && ordinaryHands && methods && bottles && taken;
}

const isTakenSound = (
	{ of, unit, value, expandedUncertainty }: NonNullable<Scenario['takenOff']>,
	water: Water
) => Math.abs(trueValueOf(water, { analyte: of, unit }) - value) <= expandedUncertainty;
