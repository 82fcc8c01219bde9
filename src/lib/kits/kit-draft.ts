import * as z from 'zod/mini';
import {
	AnalyteSchema,
	ContentsSchema,
	KitSchema,
	ReagentSchema,
	UnitSchema,
	type Assumed
} from './kit';

/**
 * A leaflet while it is typed in: every blank as it was typed, every choice as it was made, whether
 * or not it makes sense yet. Blanks of a way of delivery that is not chosen keep what they hold.
 */
const blank = z.string();
const reagent = ReagentSchema.shape;

/** The owner's own figures as blanks: shares in per cent, drops and mL as they are; empty for none. */
const assumedBlanks = z.strictObject({
	sampleHalfWidth: blank,
	deliveryHalfWidth: blank,
	dropSd: blank,
	titrantSd: blank,
	colourDrops: blank,
	tipSdMl: blank
} satisfies Record<keyof Assumed, typeof blank>);

export const draftSchema = z.strictObject({
	format: z.literal(1),
	name: blank,
	analyte: AnalyteSchema,
	unit: UnitSchema,
	/** The value is wanted for what is left of it once another is taken off, where that can be. */
	isForDifference: z.optional(z.boolean()),
	/** The normal sample first; a further one without a volume is not there. */
	volumes: z
		.array(z.strictObject({ id: z.string(), name: blank, volumeMl: blank }))
		.check(z.minLength(1)),
	measuredIn: KitSchema.shape.sample.shape.measuredIn,
	reagents: z.array(
		z.strictObject({
			id: z.string(),
			name: blank,
			role: reagent.role,
			amount: blank,
			unit: reagent.dose.shape.unit,
			/** Volume of one drop or spoonful, mL; empty where the leaflet is silent. */
			unitMl: blank,
			mixSeconds: blank,
			waitSeconds: blank
		})
	),
	by: z.enum(['syringe', 'dropper', 'burette']),
	capacityMl: blank,
	graduationMl: blank,
	numeralEveryMl: blank,
	barrelEndMl: blank,
	/** Empty when nobody knows it. */
	tipVolumeMl: blank,
	/** Empty until somebody has looked at the syringe. */
	scale: z.enum(['', 'down', 'up']),
	dropMl: blank,
	/** The leaflet has it filled again where one filling does not reach the end. */
	isRefilled: z.optional(z.boolean()),
	kind: z.enum(['rows', 'perMl', 'perDrop']),
	valuePerMl: blank,
	valuePerDrop: blank,
	offset: blank,
	column: z.enum(['mark', 'usedMl', 'leftMl', 'drops']),
	/** A row with both blanks empty is not there. */
	rows: z.array(z.strictObject({ at: blank, value: blank })),
	startColour: blank,
	endColour: blank,
	holdsSeconds: blank,
	/** Empty where the leaflet claims nothing. */
	statedAccuracy: blank,
	hazards: z.array(blank),
	assumed: assumedBlanks,
	/** What a kit may hold that no leaflet says; it goes through unchanged. */
	carried: z.strictObject({
		invented: z.boolean(),
		hueDegrees: z.optional(z.number()),
		contents: z.optional(ContentsSchema)
	})
});
export type KitDraft = z.infer<typeof draftSchema>;
export type DraftReagent = KitDraft['reagents'][number];

/** First of 'reagent-1', 'reagent-2', … that is not taken. */
function freeId(stem: string, taken: readonly { id: string }[]): string {
	let n = 1;
	while (taken.some(({ id }) => id === `${stem}-${n}`)) n += 1;
	return `${stem}-${n}`;
}

/** A reagent of which nothing has been typed, with an id that none of the others bears. */
export function emptyReagent(others: readonly { id: string }[]): DraftReagent {
	return {
		id: freeId('reagent', others),
		name: '',
		role: 'indicator',
		amount: '',
		unit: 'drop',
		unitMl: '',
		mixSeconds: '',
		waitSeconds: ''
	};
}

/** A leaflet of which nothing has been typed: a syringe, one reagent and a table, as most have. */
export function emptyDraft(): KitDraft {
	return {
		format: 1,
		name: '',
		analyte: 'alkalinity',
		unit: 'dKH',
		volumes: [
			{ id: 'normal', name: '', volumeMl: '' },
			{ id: 'fine', name: '', volumeMl: '' }
		],
		measuredIn: 'syringe',
		reagents: [emptyReagent([])],
		by: 'syringe',
		capacityMl: '',
		graduationMl: '',
		numeralEveryMl: '',
		barrelEndMl: '',
		tipVolumeMl: '',
		scale: '',
		dropMl: '',
		kind: 'rows',
		valuePerMl: '',
		valuePerDrop: '',
		offset: '',
		column: 'mark',
		rows: Array.from({ length: 4 }, () => ({ at: '', value: '' })),
		startColour: '',
		endColour: '',
		holdsSeconds: '',
		statedAccuracy: '',
		hazards: [],
		assumed: {
			sampleHalfWidth: '',
			deliveryHalfWidth: '',
			dropSd: '',
			titrantSd: '',
			colourDrops: '',
			tipSdMl: ''
		},
		carried: { invented: false }
	};
}
