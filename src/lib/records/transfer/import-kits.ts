import type { KitRow } from '../headers';
import type { KitRecords } from '../kits';
import { canonical } from './canonical';
import type { FileItem } from './read-file';
import type { ImportReport } from './report';

/**
 * Merges versions of kits into the store. The same version of the same kit is there already; another
 * leaflet under a number that is taken gets a higher one.
 * A number is left out before it, so that a correction made elsewhere does not correct the leaflet
 * that stands last here.
 */
export async function importKits(
	items: readonly FileItem[],
	kits: KitRecords,
	read: (raw: unknown) => KitRow,
	report: ImportReport
): Promise<void> {
	const rows = await kits.all();
	for (const { where, raw } of items) {
		let row: KitRow;
		try {
			row = read(raw);
		} catch (error) {
			const problem = error instanceof Error ? error.message : String(error);
			report.damaged.push({ where: placeOf(raw, where), problem, raw });
			continue;
		}
		const versions = rows.filter(({ kitId }) => kitId === row.kitId);
		if (versions.some((version) => isSame(version, row))) {
			report.already += 1;
			continue;
		}
		const isTaken = versions.some(({ version }) => version === row.version);
		const version = isTaken ? Math.max(...versions.map((each) => each.version)) + 2 : row.version;
		const toStore = { ...row, version };
		const kept = await kits.add(toStore);
		if (!kept.kept) {
			report.refused.push({ where, ...kept });
			continue;
		}
		rows.push(toStore);
		report.added += 1;
		if (isTaken) {
			const id = `${row.kitId}, version ${version}`;
			report.keptApart.push({ where, id, of: row.kitId, because: 'diverged' });
		}
	}
}

/** Said in the same moment, whatever number it got since; or the same under the same number. */
function isSame(a: KitRow, b: KitRow): boolean {
	const isSaidTogether = a.savedAtEpochMs === b.savedAtEpochMs || a.version === b.version;
	return isSaidTogether && a.kind === b.kind && canonical(a.kit) === canonical(b.kit);
}

function placeOf(raw: unknown, where: string): string {
	const id = typeof raw === 'object' && raw !== null && 'kitId' in raw ? raw.kitId : undefined;
	return typeof id === 'string' ? `${where} (kit ${id})` : where;
}
