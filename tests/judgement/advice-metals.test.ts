import { describe, expect, it } from 'vitest';
import {
	bandOf,
	correctionInputOf,
	correctionPlan,
	decide,
	diagnoseAndRank,
	limitsOf,
	type CorrectionPlan
} from '../../src/lib/judgement';
import { houseCalciumKit, houseHardnessKit } from '../../src/lib/kits';
import { differenceFiguresOf, methodFiguresOf } from '../../src/lib/metrology';
import type { Evidence, EvidenceOf, Means, Reading, Tank } from '../../src/lib/observation';

/** Each analysis of a test that is filled again takes seconds on a slow machine. */
const SLOW_MS = 120_000;

type Metal = 'calcium' | 'magnesium';
type Setting = {
	method: ReturnType<typeof methodFiguresOf>;
	/** What one test claims, mg/L: its ± and its scatter. */
	claims: readonly [expandedUncertainty: number, scatter: number];
	target: number;
	means: Means;
};
const settings: Record<Metal, Setting> = {
	calcium: {
		method: methodFiguresOf(houseCalciumKit),
		claims: [18, 4],
		target: 420,
		means: { by: 'calciumChloride', hydrate: 'dihydrate', purity: 0.98 }
	},
	magnesium: {
		method: differenceFiguresOf(houseHardnessKit, { value: 420, unit: 'mg/L' }),
		claims: [75, 20],
		target: 1320,
		means: { by: 'magnesiumChloride', hydrate: 'hexahydrate', purity: 0.98 }
	}
};
/** g of salt that hold a g of metal. Standard atomic weights of IUPAC: CaCl2·2H2O 147.01, MgCl2·6H2O 203.30. */
const gramsPerGram = { calcium: 147.01 / 40.078 / 0.98, magnesium: 203.3 / 24.305 / 0.98 };
const WATER_L = 200;

function readerOf(metal: Metal) {
	const [expandedUncertainty, repeatabilitySd] = settings[metal].claims;
	const reading = (id: string, value: number): Reading & { repeatabilitySd: number } => ({
		id,
		label: id,
		value,
		expandedUncertainty,
		repeatabilitySd,
		unit: 'mg/L'
	});
	return {
		test: (value: number, from: EvidenceOf<'test'>['from'] = 'first'): Evidence => ({
			kind: 'test',
			from,
			reading: reading(from, value)
		}),
		earlier: (value: number, daysAgo: number): Evidence => ({
			kind: 'earlier',
			daysAgo,
			reading: reading('earlier', value)
		}),
		photometer: (value: number, itsUncertainty: number): Evidence => {
			const { repeatabilitySd: _, ...read } = reading('photometer', value);
			return {
				kind: 'secondMethod',
				method: 'photometer',
				reading: { ...read, expandedUncertainty: itsUncertainty }
			};
		}
	};
}
const ofCalcium = readerOf('calcium');
const ofMagnesium = readerOf('magnesium');
const cue = (id: string, answer: string): Evidence => ({ kind: 'cue', cue: id, answer });

/** From what was read to what to do, as the check does it, in a tank of the sea's salinity unless another is said. */
function advice(metal: Metal, evidence: readonly Evidence[], salinity: number | null = 35) {
	const { method, target, means } = settings[metal];
	const tank: Tank = {
		waterL: WATER_L,
		unit: 'mg/L',
		target,
		...(salinity === null ? {} : { salinity })
	};
	const { isDefault: _, ...band } = bandOf(tank, 'mg/L', metal);
	const { diagnosis, ranking } = diagnoseAndRank(evidence, {
		method,
		analyte: metal,
		unit: 'mg/L',
		band
	});
	const decision = decide({
		diagnosis,
		analyte: metal,
		band,
		livestock: 'notLooked',
		next: ranking.next,
		ranked: ranking.ranked,
		isEnough: ranking.isEnough,
		salinity
	});
	const plan = correctionPlan(
		correctionInputOf({ decision, diagnosis, tank, means, isUnitSure: true, analyte: metal })
	);
	const foundFault = diagnosis.explanations.find(({ id }) => id !== 'none' && id !== 'realChange');
	return { diagnosis, ranking, decision, plan, foundFault: foundFault?.id };
}

/** A plan from where the water is thought to be to the target, reckoned again by hand. */
function expectSlowPlan(metal: Metal, { plan, diagnosis }: ReturnType<typeof advice>): void {
	expect(plan.kind).toBe('plan');
	const { days, totalAmount, risePerDay, amountUnit } = plan as CorrectionPlan;
	const { target } = settings[metal];
	const missing = (target - diagnosis.trueValue.mean) / 1000;
	// The value begins with the figure that is shown, which is rounded to a mg/L.
	const rounding = (0.6 / 1000) * WATER_L * gramsPerGram[metal];
	expect(amountUnit).toBe('g');
	const byHand = missing * WATER_L * gramsPerGram[metal];
	expect(Math.abs(totalAmount - byHand)).toBeLessThan(rounding + 0.003 * byHand);
	// 20 mg/L of calcium and 50 of magnesium a day at most: common practice, no source.
	const most = { calcium: 20, magnesium: 50 }[metal];
	expect(limitsOf(metal).rise.hardCapPerDay).toBe(most);
	expect(risePerDay).toBeLessThanOrEqual(most);
	expect(days.length).toBeGreaterThanOrEqual(Math.ceil((1000 * missing) / most));
	expect(days.at(-1)?.expected).toBeCloseTo(target, 6);
	expect(days.filter(({ isRetest }) => isRetest).length).toBeGreaterThanOrEqual(2);
}

/** What is sound here is common practice, no source: prove first, move slowly, salinity before all. */
describe('faults of the test that look like another water', { timeout: SLOW_MS }, () => {
	it('calcium 500 by an old base: the base is found, nothing is done about calcium', () => {
		const { foundFault, decision, plan } = advice('calcium', [
			ofCalcium.test(500),
			ofCalcium.earlier(425, 7),
			cue('baseBottle', 'old'),
			cue('blueHeld', 'followed')
		]);
		expect(foundFault).toBe('baseOld');
		expect(decision.verdict).not.toBe('adjust');
		expect(decision.probabilities?.above).toBeLessThan(0.25);
		expect(plan.kind).toBe('refused');
	});
	it('a vial with more base that reads as before settles it: calcium is left', () => {
		const { decision, diagnosis } = advice('calcium', [
			ofCalcium.test(500),
			ofCalcium.earlier(425, 7),
			cue('baseBottle', 'old'),
			ofCalcium.test(428, 'moreBase')
		]);
		expect(decision.verdict).toBe('leave');
		expect(Math.abs(diagnosis.trueValue.median - 426)).toBeLessThan(10);
	});
	it('magnesium one filling too low: the filling is found, and magnesium is left', () => {
		const filling = settings.magnesium.method.filling?.ml ?? Number.NaN;
		const one = filling * settings.magnesium.method.valuePerMl;
		const { foundFault, decision, diagnosis } = advice('magnesium', [
			ofMagnesium.test(1330 - one),
			ofMagnesium.earlier(1330, 7),
			cue('fillings', 'one')
		]);
		expect(foundFault).toBe('fillingForgotten');
		expect(decision.verdict).toBe('leave');
		expect(Math.abs(diagnosis.trueValue.median - 1330)).toBeLessThan(40);
	});
	it('magnesium odd as calcium was taken for 420 and is 480: that is the first fault, nothing is added', () => {
		// (480 − 420) × 24.305 / 40.078 = 36 mg/L too much.
		const { foundFault, decision, plan } = advice('magnesium', [
			ofMagnesium.test(1366),
			ofMagnesium.earlier(1330, 7),
			cue('whichCalcium', 'usual')
		]);
		expect(foundFault).toBe('calciumTakenOff');
		expect(decision.verdict).not.toBe('adjust');
		expect(plan.kind).toBe('refused');
	});
});

describe('salinity 31, which makes all of it low', { timeout: SLOW_MS }, () => {
	const low: [Metal, Evidence[]][] = [
		['calcium', [ofCalcium.test(360), ofCalcium.photometer(362, 12)]],
		['magnesium', [ofMagnesium.test(1150), ofMagnesium.photometer(1160, 40)]]
	];
	it.each(low)('%s: salinity is put right first, nothing is added', (metal, evidence) => {
		const { decision, plan } = advice(metal, evidence, 31);
		expect(decision).toMatchObject({ verdict: 'check', lacks: 'salinityRight', direction: null });
		expect(decision.because[0]).toMatch(/salinity of 31 .*Put that right first/);
		expect(plan.kind).toBe('refused');
	});
	it('a salinity that nobody measured is measured first', () => {
		const { decision } = advice(
			'calcium',
			[ofCalcium.test(340), ofCalcium.photometer(343, 14), ofCalcium.test(341, 'repeatFull')],
			null
		);
		expect(decision).toMatchObject({ verdict: 'check', lacks: 'salinity' });
	});
});

describe('water that is really low', { timeout: SLOW_MS }, () => {
	it('calcium 340 that a second method bears out is raised, slowly', () => {
		const advised = advice('calcium', [
			ofCalcium.test(340),
			ofCalcium.photometer(343, 14),
			ofCalcium.earlier(395, 14)
		]);
		expect(advised.decision).toMatchObject({
			verdict: 'adjust',
			direction: 'raise',
			isVerified: true
		});
		expectSlowPlan('calcium', advised);
	});
	it('magnesium 1100 that a second method bears out is raised, slowly', () => {
		const advised = advice('magnesium', [
			ofMagnesium.test(1100),
			ofMagnesium.photometer(1110, 50),
			ofMagnesium.earlier(1250, 14)
		]);
		expect(advised.decision).toMatchObject({
			verdict: 'adjust',
			direction: 'raise',
			isVerified: true
		});
		expectSlowPlan('magnesium', advised);
	});
	const unverified: [Metal, Evidence][] = [
		['calcium', ofCalcium.test(340)],
		['magnesium', ofMagnesium.test(1100)]
	];
	it.each(unverified)('%s: as long as nothing else says so it is checked', (metal, evidence) => {
		const { decision, plan } = advice(metal, [evidence]);
		expect(decision).toMatchObject({ verdict: 'check', isVerified: false });
		expect(decision.check).not.toBeNull();
		expect(decision.because[0]).toMatch(/^Nothing goes into the tank before that is checked/);
		expect(plan.kind).toBe('refused');
	});
	const atEdge: [Metal, Evidence[]][] = [
		['calcium', [ofCalcium.test(375), ofCalcium.photometer(376, 14)]],
		['magnesium', [ofMagnesium.test(1230), ofMagnesium.photometer(1235, 50)]]
	];
	it.each(atEdge)('%s below the band by less than its ± is not moved', (metal, evidence) => {
		const repeat =
			metal === 'calcium'
				? ofCalcium.test(374, 'repeatFull')
				: ofMagnesium.test(1233, 'repeatFull');
		expect(advice(metal, [...evidence, repeat]).decision.verdict).toBe('leave');
	});
});
