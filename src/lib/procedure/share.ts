import * as z from 'zod/mini';
import { houseKits, type Kit } from '../kits';
import { liveEntries } from '../observation';
import { coachingWays, loadRunLog, type RunEvent, type RunLog } from './run-log';

/** Number of the form of shared text. It names what it holds, so that an old link can still be read. */
const SHARE_FORMAT = 1;

/**
 * A run as little text: every different event once, then pairs of (ms since the one before, which
 * event). A house kit goes by its name unless it has changed since.
 */
const SharedSchema = z.strictObject({
	v: z.literal(SHARE_FORMAT),
	scenario: z.string(),
	seed: z.int(),
	coaching: z.enum(coachingWays),
	kit: z.union([z.string(), z.looseObject({})]),
	events: z.array(z.looseObject({})),
	steps: z.array(z.int().check(z.nonnegative()))
});

/**
 * A run as text that may stand in a link: everything that decides it, and nothing that only this
 * device knows (its names for entries, the date). What was taken back is left out.
 */
export function encodeRun(log: RunLog): string {
	const places = new Map<string, number>();
	const steps: number[] = [];
	let before = 0;
	for (const { at, event } of liveEntries(log.entries)) {
		const text = JSON.stringify(event);
		const place = places.get(text) ?? places.size;
		places.set(text, place);
		steps.push(at - before, place);
		before = at;
	}
	const house = houseKits.find((kit) => JSON.stringify(kit) === JSON.stringify(log.kit));
	const shared: z.input<typeof SharedSchema> = {
		v: SHARE_FORMAT,
		scenario: log.scenarioId,
		seed: log.seed,
		coaching: log.coaching,
		kit: house?.id ?? log.kit,
		events: [...places.keys()].map((text) => JSON.parse(text) as RunEvent),
		steps
	};
	return toUrlSafe(JSON.stringify(shared));
}

/**
 * The run that such text holds, for this device: under the name and date given.
 *
 * @throws RangeError when the text is cut off, damaged, or no run
 */
export function decodeRun(
	text: string,
	here: { id: string; startedAtEpochMs: number } = { id: 'shared', startedAtEpochMs: 0 }
): RunLog {
	const shared = SharedSchema.safeParse(parsed(text));
	if (!shared.success) throw cutOff();
	const { kit, events, steps } = shared.data;
	const entries: unknown[] = [];
	let at = 0;
	for (let i = 0; i < steps.length; i += 2) {
		at += steps[i] ?? 0;
		entries.push({ id: (i / 2).toString(36), at, event: events[steps[i + 1] ?? -1] });
	}
	return loadRunLog({
		format: 1,
		...here,
		scenarioId: shared.data.scenario,
		seed: shared.data.seed,
		coaching: shared.data.coaching,
		kit: typeof kit === 'string' ? houseKitNamed(kit) : kit,
		entries
	});
}

function houseKitNamed(id: string): Kit {
	const kit = houseKits.find((each) => each.id === id);
	if (!kit) throw new RangeError(`the link is for a kit that is not known here: ${id}`);
	return kit;
}

const cutOff = () => new RangeError('the link is cut off or damaged: its run cannot be read');

function parsed(text: string): unknown {
	try {
		return JSON.parse(fromUrlSafe(text));
	} catch {
		throw cutOff();
	}
}

/** Base 64 for addresses (RFC 4648, section 5), of the text as UTF-8. */
function toUrlSafe(text: string): string {
	let binary = '';
	for (const byte of new TextEncoder().encode(text)) binary += String.fromCharCode(byte);
	return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromUrlSafe(text: string): string {
	const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
	const bytes = Uint8Array.from(binary, (each) => each.charCodeAt(0));
	return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
}
