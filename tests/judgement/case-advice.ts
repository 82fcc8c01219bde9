import {
	correctionPlan,
	decide,
	diagnose,
	hydratesOf,
	meansFor,
	rankChecks
} from '../../src/lib/judgement';
import { livestockLooks, type Evidence } from '../../src/lib/observation';

const reading = (id: string, value: number) => ({
	id,
	label: id,
	value,
	expandedUncertainty: 0.5,
	unit: 'dKH' as const
});

/** 6.2 twice, and a known solution of 8.0 that reads 8.0. */
const evidence: Evidence[] = [
	{ kind: 'test', from: 'first', reading: reading('monday', 6.2) },
	{ kind: 'test', from: 'repeatFull', reading: reading('again', 6.2) },
	{
		kind: 'reference',
		reading: reading('known', 8),
		nominal: 8,
		nominalExpandedUncertainty: 0.2,
		matrix: 'seawater'
	}
];
const said = {
	band: { low: 7, high: 9, unit: 'dKH' },
	livestock: 'notLooked',
	salinity: 35
} as const;
const correction = {
	value: { value: 6.2, standardUncertainty: 0.2, unit: 'dKH' },
	target: 7.2,
	waterL: 100,
	waterExpandedUncertaintyL: 5,
	consumptionPerDay: 0.2,
	dosedPerDay: 0.2,
	means: { by: 'bicarbonate', purity: 1 },
	salinity: 35,
	ph: 8.1
} as const;

/** The worked cases of the page, and what comes of them. */
export function adviceCases() {
	const { band, livestock } = said;
	const ranking = rankChecks(evidence, { band, livestock });
	const decision = decide({ diagnosis: diagnose(evidence), ...ranking, ...said });
	return {
		evidence,
		said,
		correction,
		ranking,
		decision,
		plan: correctionPlan({ ...correction, decision })
	};
}

const rounded = (_: string, value: unknown): unknown =>
	typeof value === 'number' ? Number(value.toPrecision(3)) : value;
const json = (value: object) => `\`\`\`json\n${JSON.stringify(value, rounded, '\t')}\n\`\`\``;
const codes = (names: readonly string[]) => names.map((each) => `\`${each}\``).join(', ');

/** The powders that come with more or less water in their crystals, each with its hydrates. */
function withHydrates(): string {
	const powders = new Set((['alkalinity', 'calcium', 'magnesium'] as const).flatMap(meansFor));
	return [...powders]
		.filter((by) => Object.keys(hydratesOf(by)).length > 0)
		.map((by) => `\`${by}\` with a \`hydrate\` (${codes(Object.keys(hydratesOf(by)))})`)
		.join(', ');
}

/** What `decide` and `correctionPlan` take and give, with a worked case of each. */
export function adviceDocs(): string[] {
	const { decision, plan } = adviceCases();
	if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
	const { because: _, wouldChange: __, ...decided } = decision;
	const { days, daysInAll, amountUnit, totalAmount, risePerDay } = plan;
	return [
		'## What to do: `decide`',
		'Takes one object. Of `rankChecks` with the same `band` and `livestock` come `ranked`, `next` and `isEnough`; of `diagnose` comes `diagnosis`.',
		[
			'- `diagnosis`: what `diagnose` gives; null only with `isEmergency`',
			'- `next`: a ranked check or null; `ranked`?: list of them, the best first; `isEnough`: boolean',
			'- `band`: `low` and `high`, numbers, low at most high, in its `unit`: between which values the tank is wanted',
			`- \`livestock\`: one of ${codes(livestockLooks)}`,
			'- `analyte`?: `alkalinity` when left out',
			'- `rate`?: `perDay`, number, and `expandedUncertainty`, 0 or above, both in the band’s unit a day; or null',
			'- `consumptionPerDay`?: number, 0 or above, in the band’s unit a day; or null',
			'- `salinity`?: practical salinity, 5 to 45; null or left out: not known, unless `isSalinityKnown` is true',
			'- `isSalinityKnown`?, `isUnitSure`?, `isEmergency`?, `hasStonyCorals`?: booleans',
			`- \`who\`?: one of ${codes(['keeper', 'sitter', 'child'])}`
		].join('\n'),
		`Gives \`verdict\`, one of ${codes(['leave', 'check', 'adjust', 'emergency'])}; \`direction\`, ${codes(['raise', 'lower'])} or null; \`probabilities\` that the true value lies \`below\`, \`within\` and \`above\` the band; \`check\`, the one to make first, or what \`lacks\` where it is none of the ranking (${codes(['reading', 'repeat', 'unit', 'salinity', 'salinityRight', 'independent'])}); \`isVerified\`; \`change\`, ${codes(['tooSmallToTell', 'notSettled', 'likelyReal'])} or null; \`retestInDays\`, a whole number; \`because\` and \`wouldChange\`, lists of sentences. The verdict is \`check\` for the reading’s sake exactly where \`isEnough\` is false.`,
		'6.2 read twice, and a known solution of 8.0 that reads 8.0:',
		json({ evidence, decide: said }),
		'comes to this, to three digits, with the sentences left out:',
		json(decided),
		'## How to move it: `correctionPlan`',
		'Takes one object. Values are in the unit of `value`, a day’s values in that unit a day, volumes in litres. What is marked ? may be left out or null; without the target, the water, the salinity or the means there is no plan but a refusal that says why. A figure that no tank can have, a text where a number must be, and a means that is none or lacks a part of it are a `RangeError` that names the field.',
		[
			'- `decision`: what `decide` gave',
			'- `value`: `value`, number; `standardUncertainty`, 0 or above (half of a ± of 95 %); `unit`',
			'- `target`?: number, within the band',
			'- `waterL`?: 1 to 1,000,000; `waterExpandedUncertaintyL`?: 0 or above, below half of it; a tenth of it when left out',
			'- `consumptionPerDay`? and `dosedPerDay`?: 0 or above, both or neither; in balance when left out',
			`- \`means\`?: by \`by\`: \`bicarbonate\` with \`purity\` (0.01 to 1); ${withHydrates()}, each with its \`purity\` as well (\`bicarbonate\` has one form and no \`hydrate\`); \`limewater\`; \`product\` with \`risePerMlIn100L\` (above 0); \`waterChange\` with \`newValue\` (0 or above) and \`share\` (above 0, at most 1). For alkalinity ${codes(meansFor('alkalinity'))}; for calcium ${codes(meansFor('calcium'))}; for magnesium ${codes(meansFor('magnesium'))}`,
			'- `salinity`?: practical salinity, 0 to 60; `temperatureC`?: 0 to 40 °C, 25 when left out; `ph`?: 0 to 14, 8.1 when left out',
			'- `maxRisePerDay`?: above 0; `evaporationLPerDay`?: 0 or above; `testExpandedUncertainty`?: 0 or above, of a retest; `otherValues`?: list of numbers that the tank may hold instead',
			'- `band`?: as above; the usual one when left out; `isUnitSure`?, `who`?, `analyte`?: as above'
		].join('\n'),
		'Gives `kind` `refused` with `because`, a list of sentences; or `kind` `plan` with `days`, each with its `amount` in `amountUnit` (`g`, `mL` or `L`), the value `expected` at its end and that value’s `expectedExpandedUncertainty`, the `phChange` if all went in at once, and `isRetest`; `daysInAll`, `totalAmount`, `risePerDay`, `additionPerDay`, `meansName`, and the lists of sentences `sum`, `cautions` and `wouldChange`.',
		'With the decision above:',
		json(correction),
		'comes to this, to three digits, with the sentences left out:',
		json({ kind: plan.kind, amountUnit, totalAmount, risePerDay, daysInAll, days })
	];
}
