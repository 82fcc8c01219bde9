import { ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM, parallaxMl } from '../glassware';
import { SEAL_RIM_ML } from '../bench';
import type { Kit, Unit } from '../kits';
import { countedMark, rowTolerance } from './counted-mark';
import { additionsIn, eventsOf, lastOf, type Of } from './event-queries';
import { dropCheckOf } from './drop-check';
import type { AtTank, Detector, Seen } from './slip-detector';

const firm = { provisional: false };

/** What was typed beside what stood there, for the mark that counts. */
type Reading = {
	read: Of<'marks.read'>;
	by: 'seal' | 'line' | 'level';
	typed: number;
	stood: number;
	graduationMl: number;
};

function readingOf({ kit, events }: Seen): Reading | null {
	const read = lastOf(events, 'marks.read');
	if (!read || kit.delivery.by === 'dropper') return null;
	const { marks, stood } = read.event;
	const counted = countedMark(kit, events)?.by;
	const order = [counted, 'seal', 'line', 'level'] as const;
	for (const by of order) {
		if (!by || by === 'drops') continue;
		const typed = marks[`${by}Ml`];
		const there = stood?.[`${by}Ml`];
		if (typed !== undefined && there !== undefined)
			return { read, by, typed, stood: there, graduationMl: kit.delivery.graduationMl };
	}
	return null;
}

/** What an eye off the level does to the numeral it reads, mL. */
function parallaxOf(kit: Kit, eyeDegrees: number | undefined): number {
	// A burette is so much wider for its print that a slanting look stays within half a division.
	if (kit.delivery.by !== 'syringe' || !eyeDegrees) return 0;
	const sign = kit.delivery.scale === 'down' ? 1 : -1;
	return sign * parallaxMl(eyeDegrees, ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM);
}

type OffKind = 'scaleReversed' | 'wrongRim' | 'parallax' | 'misread';
type Cause = { kind: OffKind; entryId: string; sizeMl: number };

/** The single cause that explains best what was typed, if it is off by more than the eye's limit. */
function causeOf(seen: Seen): Cause | null {
	if (seen.tank) return causeAtTank(seen, seen.tank);
	const reading = readingOf(seen);
	return reading ? causeFromGlass(seen.kit, reading) : causeFromDrops(seen);
}

function causeFromGlass(kit: Kit, reading: Reading): Cause | null {
	const { read, by, typed, stood, graduationMl } = reading;
	const { delivery } = kit;
	const off = typed - stood;
	const limit = 0.75 * graduationMl;
	const parallax = parallaxOf(kit, read.event.eyeDegrees);
	const entryId = read.id;
	if (Math.abs(off) <= limit) return null;
	if (delivery.by === 'syringe' && Math.abs(typed - (delivery.capacityMl - stood)) <= limit)
		return { kind: 'scaleReversed', entryId, sizeMl: off };
	if (Math.abs(parallax) > 0.5 * graduationMl && Math.abs(off - parallax) <= limit)
		return { kind: 'parallax', entryId, sizeMl: parallax };
	if (by === 'seal' && Math.abs(Math.abs(off) - SEAL_RIM_ML) <= 0.6 * graduationMl)
		return { kind: 'wrongRim', entryId, sizeMl: off };
	return { kind: 'misread', entryId, sizeMl: off };
}

/** Counting drops is rough, since drops scatter and a stream has none: this share and so many drops. */
const COUNT_SHARE = 0.2;
const COUNT_DROPS = 4;

/** Where nobody knows what stood there, the drops that were counted say roughly what was used. */
function causeFromDrops({ kit, events }: Seen): Cause | null {
	const { delivery } = kit;
	const counted = countedMark(kit, events);
	if (delivery.by !== 'syringe' || !counted || counted.by === 'drops') return null;
	const { read } = counted;
	// Titrant that was left out of the count went in all the same.
	const usedMl = counted.usedMl + counted.uncountedMl;
	const told = eventsOf(additionsIn(events), 'titrant.fell').map(({ event }) => event.drops);
	const tallied = told.every((drops) => drops !== undefined)
		? told.reduce((sum: number, drops) => sum + (drops ?? 0), 0)
		: undefined;
	const drops = read.event.marks.drops ?? tallied;
	if (!drops) return null;
	const dropsMl = drops * delivery.dropMl;
	const limitMl = Math.max(COUNT_SHARE * dropsMl, COUNT_DROPS * delivery.dropMl);
	const usedOtherWayMl = delivery.capacityMl - usedMl;
	if (Math.abs(usedMl - dropsMl) <= limitMl) return null;
	return {
		kind: Math.abs(usedOtherWayMl - dropsMl) <= limitMl ? 'scaleReversed' : 'misread',
		entryId: read.id,
		sizeMl: usedMl - dropsMl
	};
}

/** Real hands: the drops they counted against the travel that their value rests on. */
function causeAtTank({ kit, events }: Seen, { valued }: AtTank): Cause | null {
	const read = lastOf(events, 'marks.read');
	const check = dropCheckOf(kit, events, valued);
	if (!read || !check || check.agrees) return null;
	return {
		kind: check.causes[0] === 'otherEnd' ? 'scaleReversed' : 'misread',
		entryId: read.id,
		sizeMl: check.differenceMl
	};
}

const onlyIf =
	(kind: OffKind): Detector =>
	(seen) => {
		const cause = causeOf(seen);
		return cause?.kind === kind ? [{ ...firm, entryId: cause.entryId, sizeMl: cause.sizeMl }] : [];
	};

const dropsMiscounted: Detector = ({ kit, events }) => {
	const read = lastOf(events, 'marks.read');
	const stood = read?.event.stood?.drops;
	const typed = read?.event.marks.drops;
	return read &&
		kit.delivery.by === 'dropper' &&
		stood !== undefined &&
		typed !== undefined &&
		stood !== typed
		? [{ ...firm, entryId: read.id, drops: typed - stood }]
		: [];
};

/** A value said beside the one that the marks make, further off than rounding can be. */
const isOtherValue = ({ value, unit }: { value: number; unit: Unit }, { valued }: AtTank) =>
	valued.value !== null &&
	unit === valued.unit &&
	Math.abs(value - valued.value) > ROUNDING * Math.abs(valued.value);
const ROUNDING = 0.03;

/** The value reported is not what the leaflet makes of the mark typed. */
const wrongRow: Detector = ({ kit, events, tank }) => {
	const reported = lastOf(events, 'value.reported');
	if (reported && tank)
		return isOtherValue(reported.event, tank) ? [{ ...firm, entryId: reported.id }] : [];
	const counted = countedMark(kit, events);
	return reported &&
		counted &&
		Math.abs(reported.event.value - counted.value) > rowTolerance(kit, counted)
		? [{ ...firm, entryId: reported.id }]
		: [];
};

/** The value reported is that of the last filling alone, or leaves one of several out. */
const refillForgotten: Detector = ({ kit, events, tank }) => {
	const reported = lastOf(events, 'value.reported');
	// Beside a tank the fillings that were noted are counted for the person.
	const counted = reported && !tank ? countedMark(kit, events) : null;
	return reported && counted?.refills === 'forgotten'
		? [{ ...firm, entryId: reported.id, sizeMl: -counted.uncountedMl }]
		: [];
};

export const readingSlips = {
	wrongRim: onlyIf('wrongRim'),
	dropsMiscounted,
	misread: onlyIf('misread'),
	parallax: onlyIf('parallax'),
	scaleReversed: onlyIf('scaleReversed'),
	refillForgotten,
	wrongRow
};
