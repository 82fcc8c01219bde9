import { describe, expect, it, test } from 'vitest';
import {
	houseKitOf,
	kitForTest,
	kitInForce,
	loadKit,
	loadKitVersion,
	nextVersion,
	type KitVersion
} from '../../src/lib/kits';

const kit = houseKitOf('house-burette');
const versionOf = (
	version: number,
	kind: KitVersion['kind'],
	savedAtEpochMs = 1000 * version
): KitVersion => ({
	format: 1,
	kitId: kit.id,
	version,
	savedAtEpochMs,
	kind,
	kit: { ...kit, name: `as of ${version}` }
});
const testAt = (kitVersion: number) => ({ kit: { ...kit, name: 'frozen' }, kitVersion });

describe('the version in force', () => {
	it('is the newest, in whatever order they come, and of this kit only', () => {
		const other = { ...versionOf(7, 'new'), kitId: 'other', kit: { ...kit, id: 'other' } };
		const versions = [
			versionOf(1, 'change'),
			other,
			versionOf(0, 'new'),
			versionOf(2, 'correction')
		];
		expect(kitInForce(versions, kit.id)?.version).toBe(2);
		expect(nextVersion(versions, kit.id)).toBe(3);
		expect(nextVersion(versions, 'third')).toBe(0);
	});
	it('is none of a kit that is out of use, until a later version takes it back', () => {
		const archived = [versionOf(0, 'new'), versionOf(1, 'archived')];
		expect(kitInForce(archived, kit.id)).toBeNull();
		expect(kitInForce([...archived, versionOf(2, 'restored')], kit.id)?.version).toBe(2);
		expect(kitInForce([], kit.id)).toBeNull();
	});
	it('is the one saved later where two devices gave the same number', () => {
		const early = versionOf(0, 'new', 5);
		const late = { ...versionOf(0, 'new', 9), kit: { ...kit, name: 'late' } };
		expect(kitInForce([late, early], kit.id)?.kit.name).toBe('late');
		expect(kitInForce([early, late], kit.id)?.kit.name).toBe('late');
	});
});

describe('the leaflet that an old test is valued by', () => {
	test.each([
		['nothing since', ['new'], 0, 0],
		['a correction', ['new', 'correction'], 0, 1],
		['a correction of the correction', ['new', 'correction', 'correction'], 0, 2],
		['a change', ['new', 'change'], 0, 0],
		['a correction after a change leaves it alone', ['new', 'change', 'correction'], 0, 0],
		['that correction is for tests by the change', ['new', 'change', 'correction'], 1, 2],
		['a change after its correction', ['new', 'correction', 'change'], 0, 1],
		['out of use and back, corrected', ['new', 'archived', 'correction'], 0, 2],
		['out of use', ['new', 'archived'], 0, 0],
		['out of use and back as it was', ['new', 'archived', 'restored'], 0, 0],
		['the same, then corrected', ['new', 'archived', 'restored', 'correction'], 0, 3],
		['done by the newest', ['new', 'correction'], 1, 1]
	] as const)('%s', (_name, kinds, kitVersion, expected) => {
		const versions = kinds.map((kind, version) => versionOf(version, kind));
		const { kit: used, version, isCorrected } = kitForTest(versions, testAt(kitVersion));
		expect(version).toBe(expected);
		expect(isCorrected).toBe(expected !== kitVersion);
		expect(used.name).toBe(expected === kitVersion ? 'frozen' : `as of ${expected}`);
	});
	it('does not reach over a version that is missing', () => {
		const versions = [versionOf(0, 'new'), versionOf(2, 'correction')];
		expect(kitForTest(versions, testAt(0))).toMatchObject({ version: 0, isCorrected: false });
	});
	it('needs no versions: a house kit has none', () => {
		expect(kitForTest([], testAt(0))).toMatchObject({ version: 0, isCorrected: false });
	});
});

describe('from outside', () => {
	it('a kit and a version are read as they were written', () => {
		const version = versionOf(3, 'change');
		expect(loadKitVersion(JSON.parse(JSON.stringify(version)))).toEqual(version);
		expect(loadKit(JSON.parse(JSON.stringify(kit)))).toEqual(kit);
	});
	test.each([
		[
			{ ...versionOf(0, 'new'), kind: 'other' },
			'the version of a kit is damaged at kind: expected one of new, correction, change, archived, restored; found "other"'
		],
		[{ ...versionOf(0, 'new'), format: 2 }, 'at format: expected one of 1; found 2'],
		[
			{ ...versionOf(0, 'new'), version: -1 },
			'at version: expected a number of 0 or more; found -1'
		],
		[
			{ ...versionOf(0, 'new'), kitId: 'x' },
			'at kit.id: expected the id that the version bears; found "house-burette"'
		],
		[
			{ ...versionOf(0, 'new'), kit: { ...kit, unit: 'grains' } },
			'at kit.unit: expected one of dKH'
		],
		[{ ...versionOf(0, 'new'), extra: 1 }, 'at its top: expected no field named extra'],
		[null, 'at its top: expected object; found null']
	])('a damaged version is told by its field (%#)', (damaged, message) => {
		expect(() => loadKitVersion(damaged)).toThrow(RangeError);
		expect(() => loadKitVersion(damaged)).toThrow(message);
	});
	it('a kit whose table has a mark twice is refused by that field', () => {
		const rows = [
			{ at: 1, value: 2 },
			{ at: 1, value: 3 }
		];
		expect(() => loadKit({ ...kit, conversion: { kind: 'rows', column: 'usedMl', rows } })).toThrow(
			'the kit is damaged at conversion.rows: expected each mark in one row only'
		);
	});
});
