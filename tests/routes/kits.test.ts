import { describe, expect, test } from 'vitest';
import { draftOfKit, houseSyringeKit, kitOfDraft, type Kit } from '../../src/lib/kits';
import { openRecords } from '../../src/lib/records';
import { draftAtStart, isOtherwiseValued } from '../../src/routes/kits/edit/edit-kit';
import { keepVersion, lastUseOf, openShelf } from '../../src/routes/kits/kit-shelf';
import { hashOfPlace, placeOfHash } from '../../src/routes/kits/place';

const own = (name: string): Kit => ({ ...houseSyringeKit, id: name, name, invented: false });
let opened = 0;
const fresh = () => openRecords(`kits-${opened++}`);

describe('the shelf of kits', () => {
	test('versions are added and never overwritten; the newest is in use', async () => {
		const records = await fresh();
		const keep = async (kit: Kit, kind: 'new' | 'change', atEpochMs: number) =>
			keepVersion(records, (await openShelf(records)).versions, { kit, kind, atEpochMs });
		expect(await keep(own('b'), 'new', 1000)).toEqual({ kept: true });
		expect(await keep(own('a'), 'new', 2000)).toEqual({ kept: true });
		await keep({ ...own('b'), statedAccuracy: 0.5 }, 'change', 3000);
		const shelf = await openShelf(records);
		expect(shelf.inUse.map(({ kitId, version }) => [kitId, version])).toEqual([
			['a', 0],
			['b', 1]
		]);
		expect(shelf.versions).toHaveLength(3);
		expect(shelf.inUse[1]?.kit.statedAccuracy).toBe(0.5);
	});

	test('a window that did not see the other’s version is told, and nothing is lost', async () => {
		const records = await fresh();
		const before = (await openShelf(records)).versions;
		const kept = { kit: own('a'), kind: 'new', atEpochMs: 1 } as const;
		expect(await keepVersion(records, before, kept)).toEqual({ kept: true });
		expect(await keepVersion(records, before, kept)).toMatchObject({ because: 'elsewhere' });
		const { versions } = await openShelf(records);
		expect(await keepVersion(records, versions, kept)).toEqual({ kept: true });
	});

	test('what is put away is off the shelf, and what cannot be read is named', async () => {
		const records = await fresh();
		await keepVersion(records, [], { kit: own('a'), kind: 'new', atEpochMs: 1 });
		const { versions } = await openShelf(records);
		await keepVersion(records, versions, { kit: own('a'), kind: 'archived', atEpochMs: 2 });
		await records.kits.add({ kitId: 'x', version: 0, savedAtEpochMs: 1, kind: 'new', kit: {} });
		const shelf = await openShelf(records);
		expect(shelf.inUse).toEqual([]);
		expect(shelf.putAway.map(({ kitId }) => kitId)).toEqual(['a']);
		expect(shelf.unreadable).toEqual([expect.stringMatching(/is damaged at/)]);
	});

	test('a kit that was never used says so', async () => {
		expect(await lastUseOf(await fresh(), 'a', Date.now())).toEqual({
			lastUsedAtEpochMs: null,
			lot: null
		});
	});
});

describe('where a leaflet is typed in', () => {
	test('the address names it, whatever stands in an id', () => {
		for (const place of [
			{ is: 'new' },
			{ is: 'kit', id: 'a&b=c #d' },
			{ is: 'from', id: 'house-syringe' }
		] as const)
			expect(placeOfHash(hashOfPlace(place))).toEqual(place);
	});

	test('a copy of a house kit is a kit of one’s own, of unknown bottles', () => {
		const draft = draftAtStart([], { is: 'from', id: 'house-syringe' }, 'meq/L');
		if (!draft) throw new Error('a draft expected');
		const made = kitOfDraft(draft, { id: 'mine' });
		if (!('kit' in made)) throw new Error('a kit expected');
		expect(made.kit.invented).toBe(false);
		expect(made.kit.contents).toBeUndefined();
		expect(made.kit.name).toBe('Copy of House syringe kit');
		expect(made.kit.conversion).toEqual(houseSyringeKit.conversion);
	});

	test('a new leaflet begins in the unit its owner reads in; a copy keeps its own', () => {
		expect(draftAtStart([], { is: 'new' }, 'ppm CaCO3')?.unit).toBe('ppm CaCO3');
		expect(draftAtStart([], { is: 'from', id: 'house-syringe' }, 'ppm CaCO3')?.unit).toBe('dKH');
	});

	test('a house kit cannot be changed, and what is not there is not made up', () => {
		expect(draftAtStart([], { is: 'kit', id: 'house-syringe' }, 'dKH')).toBeNull();
		expect(draftAtStart([], { is: 'from', id: 'nowhere' }, 'dKH')).toBeNull();
	});

	test('only what a value can rest on needs the question why', () => {
		const kit = own('a');
		const typed = kitOfDraft(draftOfKit({ ...kit, name: 'Other', hazards: [] }), { id: 'a' });
		if (!('kit' in typed)) throw new Error('a kit expected');
		expect(isOtherwiseValued(kit, typed.kit)).toBe(false);
		expect(isOtherwiseValued(kit, { ...kit, assumed: { titrantSd: 0.02 } })).toBe(true);
		const [volume] = kit.sample.volumes;
		if (!volume) throw new Error('a volume expected');
		const sample = { ...kit.sample, volumes: [{ ...volume, volumeMl: 5 }] };
		expect(isOtherwiseValued(kit, { ...kit, sample })).toBe(true);
	});
});
