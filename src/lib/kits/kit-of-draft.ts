import { differenceOfAnalyte } from './by-difference';
import { asked, BlankReader } from './draft-blanks';
import { conversionOfDraft } from './draft-conversion';
import { deliveryOfDraft } from './draft-delivery';
import type { Suggestion } from './draft-suggestions';
import type { Assumed, Kit } from './kit';
import type { KitDraft } from './kit-draft';
import { plausibleRange, unitName } from './units';

/** What a draft comes to. */
export type DraftedKit =
	/** The kit, and which empty blanks were taken for what, by path. */
	| { kit: Kit; taken: Record<string, Suggestion> }
	/** What is wrong, by the path of the blank. */
	| { problems: Record<string, string> };

/**
 * The kit that a leaflet typed in makes, or everything that is wrong with it at once, each at its
 * blank: paths are those of the draft, 'volumes.0.volumeMl', 'rows.3.value'. Decimal comma and point
 * are both understood.
 *
 * @param as.id the id that the kit shall have
 */
export function kitOfDraft(draft: KitDraft, as: { id: string } = { id: 'typed-in' }): DraftedKit {
	const blanks = new BlankReader(draft);
	const counts = draft.kind === 'rows' && draft.column === 'leftMl' ? 'left' : 'used';
	const delivery = deliveryOfDraft(draft, blanks, counts);
	const { analyte, unit, carried } = draft;
	const kit: Kit = {
		format: 1,
		id: as.id,
		name: blanks.words('name', draft.name, 'a name for the kit'),
		invented: carried.invented,
		analyte,
		unit,
		sample: { volumes: volumesOfDraft(draft, blanks), measuredIn: draft.measuredIn },
		reagents: draft.reagents.map((_, i) => reagentOfDraft(draft, i, blanks)),
		delivery,
		conversion: conversionOfDraft(draft, delivery, blanks),
		endPoint: {
			startColour: blanks.words('startColour', draft.startColour, 'the colour at the start'),
			endColour: blanks.words('endColour', draft.endColour, 'the colour at the end'),
			holdsSeconds: blanks.number('holdsSeconds', draft.holdsSeconds, asked.holdsSeconds),
			...(carried.hueDegrees === undefined ? {} : { hueDegrees: carried.hueDegrees })
		},
		hazards: draft.hazards.map((hazard) => hazard.trim()).filter((hazard) => hazard !== '')
	};
	checkColours(draft, blanks);
	const highest = plausibleRange(unit, analyte).high;
	const statedAccuracy = blanks.optionalNumber('statedAccuracy', draft.statedAccuracy, {
		what: 'what the leaflet claims',
		low: highest / 1e4,
		high: highest / 2,
		why: `A kit claims between ${Number((highest / 1e4).toPrecision(2))} and ${Number((highest / 2).toPrecision(2))} ${unitName(unit, analyte)}`
	});
	if (statedAccuracy !== undefined) kit.statedAccuracy = statedAccuracy;
	const assumed = assumedOfDraft(draft, blanks);
	if (assumed) kit.assumed = assumed;
	if (carried.contents) kit.contents = carried.contents;
	const byDifference = differenceOfAnalyte[analyte];
	if (draft.isForDifference && byDifference) kit.byDifference = { ...byDifference };
	const { problems, taken } = blanks;
	return Object.keys(problems).length > 0 ? { problems } : { kit, taken };
}

/** An end that looks like the start is no end. */
function checkColours({ startColour, endColour }: KitDraft, blanks: BlankReader): void {
	const tidy = (words: string) => words.trim().toLowerCase();
	if (tidy(endColour) !== '' && tidy(endColour) === tidy(startColour))
		blanks.say(
			'endColour',
			`The end must look other than the start; found ${endColour.trim()} for both.`
		);
}

/** The sample volumes: the normal one must be there, each further one is larger than the one before. */
function volumesOfDraft({ volumes }: KitDraft, blanks: BlankReader): Kit['sample']['volumes'] {
	let before = 0;
	return volumes.flatMap(({ id, name, volumeMl: text }, i) => {
		if (i > 0 && text.trim() === '') return [];
		const path = `volumes.${i}.volumeMl`;
		const volumeMl = blanks.number(path, text, asked.volumeMl);
		if (volumeMl <= before)
			blanks.say(
				path,
				`A finer result needs a larger sample than ${before} mL; found ${text.trim()}.`
			);
		before = volumeMl;
		if (Number.isNaN(volumeMl)) return [];
		return [{ id, name: blanks.words(`volumes.${i}.name`, name, 'a name for it'), volumeMl }];
	});
}

function reagentOfDraft(draft: KitDraft, i: number, blanks: BlankReader): Kit['reagents'][number] {
	const reagent = draft.reagents[i];
	if (!reagent) throw new RangeError(`reagents must hold one at ${i}; found none`);
	const at = (blank: string) => `reagents.${i}.${blank}`;
	const { id, role, unit } = reagent;
	const amount = blanks.number(at('amount'), reagent.amount, asked.amount);
	if (unit === 'drop' && !Number.isNaN(amount) && !Number.isInteger(amount))
		blanks.say(at('amount'), `Drops are whole; found ${reagent.amount.trim()}.`);
	const unitMl =
		unit === 'mL' ? undefined : blanks.optionalNumber(at('unitMl'), reagent.unitMl, asked.unitMl);
	return {
		id,
		name: blanks.words(at('name'), reagent.name, 'what it is called'),
		role,
		dose: { amount, unit, ...(unitMl === undefined ? {} : { unitMl }) },
		mixSeconds: blanks.number(at('mixSeconds'), reagent.mixSeconds, asked.mixSeconds),
		waitSeconds: blanks.number(at('waitSeconds'), reagent.waitSeconds, asked.waitSeconds)
	};
}

/** Those of the owner's own figures that are shares of the value, and typed in per cent. */
export const sharesAssumed: readonly (keyof Assumed)[] = [
	'sampleHalfWidth',
	'deliveryHalfWidth',
	'dropSd',
	'titrantSd'
];

function assumedOfDraft(draft: KitDraft, blanks: BlankReader): Assumed | null {
	const assumed: Assumed = {};
	for (const field of Object.keys(draft.assumed) as (keyof Assumed)[]) {
		const typed = blanks.optionalNumber(`assumed.${field}`, draft.assumed[field], asked[field]);
		if (typed === undefined) continue;
		assumed[field] = sharesAssumed.includes(field) ? Number((typed / 100).toPrecision(12)) : typed;
	}
	return Object.keys(assumed).length > 0 ? assumed : null;
}
