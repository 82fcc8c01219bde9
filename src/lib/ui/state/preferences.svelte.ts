import type { Analyte, Unit } from '$lib/kits';
import { Persisted } from './persisted.svelte';

/**
 * Units of each analyte in the order in which they are offered, the customary first. The kits room
 * knows more of them; the first page needs no more than this, and must load little.
 */
export const unitsShown = {
	alkalinity: ['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L'],
	calcium: ['mg/L', 'mmol/L', 'mmol/kg'],
	magnesium: ['mg/L', 'mmol/L', 'mmol/kg'],
	hardness: ['mmol/L', 'mmol/kg', 'mg/L', 'ppm CaCO3']
} as const satisfies Record<Analyte, readonly [Unit, ...Unit[]]>;

/**
 * How the drops are counted at the tank: not at all until the end, a tap for each, a beat to which
 * they are let go, or a pedal that sends a key.
 */
export const countingWays = ['later', 'tap', 'beat', 'pedal'] as const;
export type CountingWay = (typeof countingWays)[number];

type Values = {
	/** Where one was chosen. */
	units: Partial<Record<Analyte, Unit>>;
	sound: boolean;
	vibration: boolean;
	spoken: boolean;
	counting: CountingWay;
	leftHanded: boolean;
	keysOn: boolean;
};

const defaults: Values = {
	units: {},
	sound: true,
	vibration: true,
	spoken: false,
	counting: 'later',
	leftHanded: false,
	keysOn: true
};

const oneOf = <T>(allowed: readonly T[], found: unknown, otherwise: T): T =>
	allowed.find((each) => each === found) ?? otherwise;
const yesOrNo = (found: unknown, otherwise: boolean): boolean =>
	typeof found === 'boolean' ? found : otherwise;

function readUnits(stored: Partial<Record<Analyte, unknown>>): Values['units'] {
	const units: Values['units'] = {};
	for (const analyte of Object.keys(unitsShown) as Analyte[]) {
		const found = stored[analyte];
		const unit = (unitsShown[analyte] as readonly Unit[]).find((each) => each === found);
		if (unit) units[analyte] = unit;
	}
	return units;
}

/** What was stored, field by field: a damaged one falls back alone. */
function read(stored: unknown): Values {
	const found: Partial<Record<keyof Values | 'unit', unknown>> =
		typeof stored === 'object' && stored !== null ? stored : {};
	return {
		// At first there was one unit, that of alkalinity.
		units: readUnits({ alkalinity: found.unit, ...(found.units as object | undefined) }),
		sound: yesOrNo(found.sound, defaults.sound),
		vibration: yesOrNo(found.vibration, defaults.vibration),
		spoken: yesOrNo(found.spoken, defaults.spoken),
		counting: oneOf(countingWays, found.counting, defaults.counting),
		leftHanded: yesOrNo(found.leftHanded, defaults.leftHanded),
		keysOn: yesOrNo(found.keysOn, defaults.keysOn)
	};
}

/** How this person works at the tank: chosen once in this browser, the same on every page. */
export class Preferences {
	readonly #kept = new Persisted<Values>('halfdrop.preferences', defaults, read);

	/**
	 * The unit in which values of an analyte are shown and typed. Leaflets and logs keep their own: that of
	 * a kit's leaflet leads with that kit, unless another was chosen.
	 */
	readonly unitFor = (analyte: Analyte, ofKit?: Unit): Unit =>
		this.#kept.current.units[analyte] ?? ofKit ?? unitsShown[analyte][0];
	chooseUnit(analyte: Analyte, unit: Unit): void {
		this.#set({ units: { ...this.#kept.current.units, [analyte]: unit } });
	}
	/** The unit of alkalinity. */
	get unit(): Unit {
		return this.unitFor('alkalinity');
	}
	set unit(unit: Unit) {
		this.chooseUnit('alkalinity', unit);
	}

	/** A tone when a wait is over. */
	get sound(): boolean {
		return this.#kept.current.sound;
	}
	set sound(sound: boolean) {
		this.#set({ sound });
	}

	get vibration(): boolean {
		return this.#kept.current.vibration;
	}
	set vibration(vibration: boolean) {
		this.#set({ vibration });
	}

	/** Instructions are spoken. */
	get spoken(): boolean {
		return this.#kept.current.spoken;
	}
	set spoken(spoken: boolean) {
		this.#set({ spoken });
	}

	get counting(): CountingWay {
		return this.#kept.current.counting;
	}
	set counting(counting: CountingWay) {
		this.#set({ counting });
	}

	/** Controls at the edges stand mirrored. */
	get leftHanded(): boolean {
		return this.#kept.current.leftHanded;
	}
	set leftHanded(leftHanded: boolean) {
		this.#set({ leftHanded });
	}

	/** Single keys and pedals do what the big button does. */
	get keysOn(): boolean {
		return this.#kept.current.keysOn;
	}
	set keysOn(keysOn: boolean) {
		this.#set({ keysOn });
	}

	#set(changed: Partial<Values>): void {
		this.#kept.current = { ...this.#kept.current, ...changed };
	}
}

/** The settings of this browser. */
export const preferences = new Preferences();
