import type { LogHeader, LogOrigin, StoredLog } from '../headers';
import type { Kept } from '../kept';
import type { LogShelf } from '../log-store';
import { logOf } from './export';
import { familyOf, stepFor, stepForRescued, type Relative, type WholeLog } from './merge';
import type { FileItem } from './read-file';
import { rescue, type ReadLog } from './rescue';
import type { ImportReport } from './report';

/** How logs of one sort are read and headed. */
export type LogImport<THeader extends LogHeader> = {
	read: ReadLog;
	/** The header of a log under an id, made of the log and of what the file's item says beside it. */
	headerOf(log: WholeLog, item: unknown, as: { id: string; origin?: LogOrigin }): THeader;
};

type Coming = { item: FileItem; log: WholeLog; isWhole: boolean };
/** A log of a family as this import leaves it: in storage, or about to be added. */
type Member = Relative & { isNew: boolean; item: FileItem | null };

const batch = 200;

/** Merges the logs of a file into a store, in batches, and notes in the report how it went. */
export async function importLogs<THeader extends LogHeader>(
	items: readonly FileItem[],
	shelf: LogShelf<THeader>,
	how: LogImport<THeader>,
	report: ImportReport
): Promise<void> {
	const families = new Map<string, string[]>();
	for (const id of await shelf.ids()) addTo(families, familyOf(id), id);
	for (let i = 0; i < items.length; i += batch) {
		const coming = items
			.slice(i, i + batch)
			.flatMap((item) => readItem(item, how.read, report) ?? []);
		await importBatch(coming, families, shelf, how, report);
	}
}

function readItem(item: FileItem, read: ReadLog, report: ImportReport): Coming | null {
	const { log, isWhole, damaged } = rescue(fieldOf(item, 'log'), item.where, read);
	report.damaged.push(...damaged);
	return log && { item, log, isWhole };
}

async function importBatch<THeader extends LogHeader>(
	coming: readonly Coming[],
	families: Map<string, string[]>,
	shelf: LogShelf<THeader>,
	how: LogImport<THeader>,
	report: ImportReport
): Promise<void> {
	const names = new Set(coming.map(({ log }) => familyOf(log.id)));
	const stored = await shelf.loadMany([...names].flatMap((name) => families.get(name) ?? []));
	const members = new Map<string, Member[]>();
	for (const each of stored) addTo(members, familyOf(each.header.id), memberOf(each, how.read));
	const refuse = (item: FileItem, kept: Kept) => {
		if (!kept.kept) report.refused.push({ where: item.where, ...kept });
	};

	for (const { item, log, isWhole } of coming) {
		const family = members.get(familyOf(log.id)) ?? [];
		const origin = fieldOf(item, 'origin') as LogOrigin | undefined;
		const isWholeLog = isWhole && origin?.because !== 'damaged';
		const step = isWholeLog ? stepFor(log, family) : stepForRescued(log, family);
		if (step.do === 'nothing') {
			report.already += 1;
		} else if (step.do === 'add') {
			const member = { log: { ...log, id: step.id }, storedFormat: log.format, isNew: true, item };
			addTo(members, familyOf(log.id), { ...member, ...(step.origin && { origin: step.origin }) });
		} else {
			const member = family.find((each) => each.log.id === step.id);
			if (!member) continue;
			if (!member.isNew) {
				const header = how.headerOf(log, item.raw, { id: step.id, ...originOf(member) });
				const missing = log.entries.slice(step.from);
				const kept = await shelf.appendAll(step.id, step.from, missing, header);
				refuse(item, kept);
				if (!kept.kept) continue;
				report.grown += 1;
			}
			member.log = { ...log, id: step.id };
			member.item = member.isNew ? item : member.item;
		}
	}

	const added = [...members.values()].flat().filter(({ isNew }) => isNew);
	const toStore = added.map((member) => ({ member, log: storedLogOf(member, how) }));
	const kept = await shelf.addAll(toStore.map(({ log }) => log));
	for (const { member, log } of toStore) {
		// All or none: where one is refused, each is tried for itself.
		const keptOne = kept.kept ? kept : await shelf.addAll([log]);
		if (member.item) refuse(member.item, keptOne);
		if (!keptOne.kept) continue;
		addTo(families, familyOf(log.header.id), log.header.id);
		report.added += 1;
		if (member.origin && member.item)
			report.keptApart.push({ where: member.item.where, id: log.header.id, ...member.origin });
	}
}

function memberOf<THeader extends LogHeader>(stored: StoredLog<THeader>, read: ReadLog): Member {
	const raw = { ...logOf(stored), id: stored.header.id } as WholeLog;
	const { origin } = stored.header as { origin?: LogOrigin };
	let log = raw;
	try {
		log = read(raw);
	} catch {
		// A damaged one is compared as it stands.
	}
	return { log, storedFormat: raw.format, isNew: false, item: null, ...(origin && { origin }) };
}

function storedLogOf<THeader extends LogHeader>(
	member: Member,
	how: LogImport<THeader>
): StoredLog<THeader> {
	const { entries, ...head } = member.log;
	const header = how.headerOf(member.log, member.item?.raw, { id: head.id, ...originOf(member) });
	return { header: { ...header, head }, entries: [...entries] };
}

function fieldOf({ raw }: FileItem, name: 'log' | 'origin'): unknown {
	return typeof raw === 'object' && raw !== null
		? (raw as Record<string, unknown>)[name]
		: undefined;
}

function originOf({ origin }: Relative): { origin?: LogOrigin } {
	return origin ? { origin } : {};
}

function addTo<T>(map: Map<string, T[]>, key: string, value: T): void {
	const list = map.get(key);
	if (list) list.push(value);
	else map.set(key, [value]);
}
