import type { FaultSize } from '../../src/lib/judgement';
import { expectedReading, readingScatter, usualMethodFigures } from '../../src/lib/metrology';
import type { Differs, Evidence, Reading } from '../../src/lib/observation';
import type { Chance } from './chance';
import {
	draw,
	drawCauses,
	effectsOf,
	shares,
	type CaseWorld,
	type Drawn,
	type Made
} from './drawn-faults';

/**
 * Cases drawn from what the diagnosis believes beforehand, by the measurement equation and nothing of
 * the diagnosis' own code: which things share which causes is written down here once more.
 */
export type DrawnCase = {
	evidence: Evidence[];
	tankDkh: number;
	/** Ids of what is wrong; `realChange` among them. */
	causes: string[];
	/** By how much the test in question is off because of them, without scatter, dKH. */
	effectDkh: number;
};

const method = usualMethodFigures;
const REAL_CHANGE: readonly FaultSize[] = [
	{ weight: 0.52, mean: -1.2, sd: 0.7, of: 'customaryUnit' },
	{ weight: 0.34, mean: 1.1, sd: 0.7, of: 'customaryUnit' },
	{ weight: 0.07, mean: -3, sd: 1.5, of: 'customaryUnit' },
	{ weight: 0.07, mean: 3.5, sd: 2, of: 'customaryUnit' }
];

const test = (from: Made['from'], differs: Differs = {}): Made => ({
	kind: 'test',
	from,
	differs,
	daysAgo: 0
});
const possible: readonly Made[] = [
	test('repeatFull'),
	test('repeatFull'),
	test('freshLot', { lot: 'fresh' }),
	test('largerSample', { sampleRatio: 2 }),
	test('otherHands', { hands: 'other' }),
	test('freshSample', { sampling: 'fresh' }),
	{ kind: 'reference', from: 'first', differs: {}, daysAgo: 0 },
	{ kind: 'second', from: 'first', differs: {}, daysAgo: 0 },
	{ kind: 'earlier', from: 'first', differs: {}, daysAgo: 7 },
	{ kind: 'earlier', from: 'first', differs: {}, daysAgo: 14 }
];

const round2 = (value: number) => Number(value.toFixed(2));

/** One case: what is wrong, and what a handful of tests show of it. */
export function drawCase(chance: Chance, world: CaseWorld): DrawnCase {
	const plan = [test('first'), ...possible.filter(() => chance.uniform() < 0.5)];
	const causes = drawCauses(chance, world, (fault) =>
		plan.some((made) => shares(fault, made, false))
	);
	const drawn = causes.faults.map((fault): Drawn => ({
		fault,
		...draw(chance, fault.sizes),
		isSince:
			['hands', 'lot', 'sampleWare', 'titrantWare'].includes(fault.scope) && chance.uniform() < 0.35
	}));
	const change = causes.isChanged ? draw(chance, REAL_CHANGE).amount : 0;
	const tankDkh = Math.max(1, 8.2 + 2 * chance.normal());
	const named = new Map<string, number>();
	/** A standard normal number that all who name it share. */
	const shared = (name: string) => {
		const known = named.get(name) ?? chance.normal();
		named.set(name, known);
		return known;
	};
	let effectDkh = 0;
	const evidence = plan.map((made, i): Evidence => {
		const here = drawn.filter(({ fault, isSince }) => shares(fault, made, isSince));
		const ratio = made.differs.sampleRatio ?? 1;
		const effects = effectsOf(here, ratio);
		const daysBack = 0.12 * chance.normal() + 0.03 * made.daysAgo * shared('trend');
		const way =
			0.08 *
			(Math.sqrt(7) * shared('way7') + (made.daysAgo > 7 ? Math.sqrt(7) * shared('way14') : 0));
		const tank =
			made.kind === 'earlier'
				? tankDkh - change - daysBack - way
				: tankDkh + 0.04 * shared(`portion ${made.differs.sampling ?? 'own'}`);
		const nominal = 8;
		const amount = made.kind === 'reference' ? nominal + 0.1 * shared('solution') : tank;
		if (made.kind === 'second') {
			const u = 0.25;
			const value =
				effects.factor * (amount + effects.inVial) + effects.added + u * chance.normal();
			const read: Reading = {
				id: `x${i}`,
				label: 'second',
				value: round2(value),
				expandedUncertainty: 2 * u,
				unit: 'dKH'
			};
			return { kind: 'secondMethod', reading: read, method: 'kit' };
		}
		const ordinary =
			1 +
			method.sampleWareSd * shared('sampleWare') +
			method.titrantWareSd * shared('titrantWare') +
			method.lotSd * shared(`lot ${made.differs.lot ?? 'own'}`);
		const clean = expectedReading(
			method,
			{ logFactor: Math.log(ordinary), amount, constantMl: 0, endPoint: 0, method: 0 },
			ratio
		);
		let value = expectedReading(
			method,
			{
				logFactor: 0,
				amount: ordinary * effects.factor * (amount + effects.inVial),
				constantMl: effects.constantMl,
				endPoint: effects.added,
				method: 0
			},
			ratio
		);
		for (const { of, amount: size } of effects.misread)
			value = of === 'share' ? value * (1 + size) : (method.fullScale ?? 0) / ratio - value + size;
		if (i === 0) effectDkh = value - clean;
		const scatter = readingScatter(method, { value: amount, sampleRatio: ratio });
		const step = (method.valuePerMl / ratio) * method.dropMl * method.endStepDrops;
		const rest = Math.sqrt(scatter.variance - step ** 2 / 12);
		value +=
			method.endPointSd * shared(`hands ${made.differs.hands ?? 'own'}`) +
			effects.times * (chance.even(step / 2) + rest * chance.normal()) +
			(made.kind === 'reference' ? 0.018 + 0.035 * shared('matrix') : 0) +
			(i > 0 && chance.uniform() < 0.05 ? chance.normal() : 0);
		const shareSd = Math.hypot(method.sampleWareSd, method.titrantWareSd, method.lotSd);
		const read: Reading = {
			id: `x${i}`,
			label: made.kind,
			value: round2(value),
			expandedUncertainty:
				2 * Math.hypot(Math.sqrt(scatter.variance), Math.abs(value) * shareSd, method.endPointSd),
			repeatabilitySd: Math.sqrt(scatter.variance),
			unit: 'dKH'
		};
		if (made.kind === 'reference')
			return {
				kind: 'reference',
				reading: read,
				nominal,
				nominalExpandedUncertainty: 0.2,
				matrix: 'sodiumChloride'
			};
		if (made.kind === 'earlier') return { kind: 'earlier', reading: read, daysAgo: made.daysAgo };
		return { kind: 'test', reading: read, from: made.from, differs: made.differs };
	});
	return {
		evidence,
		tankDkh,
		causes: [...causes.faults.map(({ id }) => id), ...(causes.isChanged ? ['realChange'] : [])],
		effectDkh
	};
}
