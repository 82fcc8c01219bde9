import { ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM, parallaxMl } from '../glassware';
import { SEAL_RIM_ML } from '../bench';
import { valueFromMark, type Kit } from '../kits';
import type { Marks } from '../observation';
import { lastOf } from './event-queries';
import type { Detector } from './slips';

const firm = { provisional: false };

/** Typed over what stood there; null when either is not known. */
function offOf(
	typed: Marks,
	stood: Marks | undefined
): { off: number; stood: number; typed: number } | null {
	for (const mark of ['sealMl', 'lineMl', 'levelMl'] as const) {
		const there = stood?.[mark];
		const written = typed[mark];
		if (there !== undefined && written !== undefined)
			return { off: written - there, stood: there, typed: written };
	}
	return null;
}

/** What the eye off the level does to the numeral it reads, mL. */
function parallaxOf(kit: Kit, eyeDegrees: number | undefined): number {
	if (kit.delivery.by === 'dropper' || !eyeDegrees) return 0;
	const sign = kit.delivery.by === 'syringe' && kit.delivery.scale === 'down' ? 1 : -1;
	return (
		sign *
		parallaxMl(eyeDegrees, ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM) *
		(kit.delivery.by === 'burette' ? 4 : 1)
	);
}

const readingOf = ({ kit, events }: Parameters<Detector>[0]) => {
	const read = lastOf(events, 'marks.read');
	const off = read && offOf(read.event.marks, read.event.stood);
	const graduationMl = kit.delivery.by === 'dropper' ? 1 : kit.delivery.graduationMl;
	return read && off ? { read, graduationMl, ...off } : null;
};

/** Which single cause explains an offset best, if it is more than the eye's limit. */
function causeOf(seen: Parameters<Detector>[0]): {
	kind: 'scaleReversed' | 'wrongRim' | 'parallax' | 'misread';
	entryId: string;
	sizeMl: number;
} | null {
	const reading = readingOf(seen);
	if (!reading) return null;
	const { read, off, stood, typed, graduationMl } = reading;
	const { delivery } = seen.kit;
	const entryId = read.id;
	if (Math.abs(off) <= 0.75 * graduationMl) return null;
	if (
		delivery.by === 'syringe' &&
		Math.abs(typed - (delivery.capacityMl - stood)) <= 0.75 * graduationMl
	)
		return { kind: 'scaleReversed', entryId, sizeMl: off };
	if (delivery.by === 'syringe' && read.event.marks.sealMl !== undefined) {
		const toRim = Math.abs(Math.abs(off) - SEAL_RIM_ML);
		if (toRim <= 0.6 * graduationMl) return { kind: 'wrongRim', entryId, sizeMl: off };
	}
	const parallax = parallaxOf(seen.kit, read.event.eyeDegrees);
	if (Math.abs(parallax) > 0.5 * graduationMl && Math.abs(off - parallax) <= 0.75 * graduationMl)
		return { kind: 'parallax', entryId, sizeMl: parallax };
	return { kind: 'misread', entryId, sizeMl: off };
}

const onlyIf =
	(kind: 'scaleReversed' | 'wrongRim' | 'parallax' | 'misread'): Detector =>
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

/** The value reported is not what the leaflet makes of the mark typed. */
const wrongRow: Detector = ({ kit, events }) => {
	const read = lastOf(events, 'marks.read');
	const reported = lastOf(events, 'value.reported');
	if (!read || !reported) return [];
	const { sealMl, lineMl, levelMl, drops } = read.event.marks;
	const chosen = lastOf(events, 'sample.chosen')?.event.volumeId;
	const volume = kit.sample.volumes.find((each) => each.id === chosen) ?? kit.sample.volumes[0];
	let expected: number;
	let perMl: number;
	try {
		const end = { markMl: sealMl ?? lineMl ?? levelMl, drops, sampleVolumeMl: volume?.volumeMl };
		({ value: expected, valuePerMl: perMl } = valueFromMark(kit, end));
	} catch {
		// A mark off the table has no row to be wrong about.
		return [];
	}
	const step = kit.delivery.by === 'dropper' ? kit.delivery.dropMl / 2 : kit.delivery.graduationMl;
	return Math.abs(reported.event.value - expected) > Math.max(0.15, step * perMl)
		? [{ ...firm, entryId: reported.id }]
		: [];
};

export const readingSlips = {
	wrongRim: onlyIf('wrongRim'),
	dropsMiscounted,
	misread: onlyIf('misread'),
	parallax: onlyIf('parallax'),
	scaleReversed: onlyIf('scaleReversed'),
	wrongRow
};
