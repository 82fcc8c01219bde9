import { describe, expect, test } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit, type Kit } from '$lib/kits';
import { valueOfTitration, type ValuedTitration } from '$lib/procedure';
import { tested } from './tank';

/** 16 dKH for each mL, less 0.30; tip and nozzle 0.17 mL: by hand, 0.48 mL is 7.38 dKH. */
const kit = houseSyringeKit;
const byFactor: Kit = {
	...kit,
	conversion: { kind: 'perMl', valuePerMl: 16, offset: -0.3 }
};
const upward: Kit = {
	...byFactor,
	delivery: { ...kit.delivery, scale: 'up' } as Kit['delivery']
};

function valued(of: Kit, said: Parameters<typeof tested>[1]): ValuedTitration {
	const [titration] = tested(of, said).titrations;
	const value = titration && valueOfTitration(titration, of);
	if (!value || value.value === null) throw new Error(value?.why ?? 'no titration');
	return value;
}
const drawn = (marks: { sealMl?: number; lineMl?: number }) =>
	({ type: 'titrant.drawn', ...marks }) as const;
const read = (marks: { sealMl?: number; lineMl?: number; levelMl?: number; drops?: number }) =>
	({ type: 'marks.read', marks }) as const;

describe('the same 0.48 mL, however it was noted', () => {
	test.each([
		['seal at both ends', [drawn({ sealMl: 1 })], read({ sealMl: 0.52 }), 'seal', 'start'],
		[
			'seal from beside the full mark',
			[drawn({ sealMl: 0.9 })],
			read({ sealMl: 0.42 }),
			'seal',
			'start'
		],
		['line at both ends', [drawn({ lineMl: 1 })], read({ lineMl: 0.52 }), 'line', 'start'],
		['no start noted', [], read({ sealMl: 0.52 }), 'seal', 'full'],
		// Line at 1.00: the seal stood at 1.17, and travels to 0.69.
		['line, then seal', [drawn({ lineMl: 1 })], read({ sealMl: 0.69 }), 'seal', 'throughTip'],
		// Seal at 1.00: the line stood at 0.83, and sinks to 0.35.
		['seal, then line', [drawn({ sealMl: 1 })], read({ lineMl: 0.35 }), 'line', 'throughTip'],
		['only a line at the end', [], read({ lineMl: 0.35 }), 'line', 'throughTip'],
		[
			'both at both ends',
			[drawn({ sealMl: 1.17, lineMl: 1 })],
			read({ sealMl: 0.69, lineMl: 0.52 }),
			'seal',
			'start'
		]
	] as const)('%s', (_name, filled, atEnd, by, from) => {
		const value = valued(kit, { filled: [...filled], read: [atEnd] });
		expect(value.value).toBeCloseTo(7.38, 10);
		expect(value).toMatchObject({ by, from, unit: 'dKH', sampleVolumeMl: 6 });
	});

	test('scale that runs up: 0 at the full mark', () => {
		const value = valued(upward, {
			filled: [drawn({ sealMl: 0.1 })],
			read: [read({ sealMl: 0.58 })]
		});
		expect(value.value).toBeCloseTo(7.38, 10);
		// Line at 0: the seal stood at −0.17 and travels to 0.31.
		const across = valued(upward, {
			filled: [drawn({ lineMl: 0 })],
			read: [read({ sealMl: 0.31 })]
		});
		expect(across.value).toBeCloseTo(7.38, 10);
	});
});

test('filled by the line and read by the seal is right when the start of the seal was noted', () => {
	const value = valued(kit, {
		filled: [drawn({ sealMl: 1.17, lineMl: 1 })],
		read: [read({ sealMl: 0.69 })]
	});
	expect(value.value).toBeCloseTo(7.38, 10);
	expect(value.from).toBe('start');
});

test('a later filling takes the place of an earlier one', () => {
	const value = valued(kit, {
		filled: [drawn({ lineMl: 1 }), drawn({ sealMl: 1 })],
		read: [read({ sealMl: 0.52 })]
	});
	expect(value).toMatchObject({ from: 'start', startMl: 1, refills: 0 });
});

describe('a refill on the way', () => {
	const titrated = [{ type: 'titrant.drawn', before: { sealMl: 0.1 }, sealMl: 1 } as const];
	test('0.90 mL, 0.90 mL drawn in, and 0.38 mL: 1.28 mL by hand', () => {
		const value = valued(byFactor, {
			filled: [drawn({ sealMl: 1 })],
			titrated,
			read: [read({ sealMl: 0.62 })]
		});
		expect(value.usedMl).toBeCloseTo(1.28, 10);
		expect(value.value).toBeCloseTo(1.28 * 16 - 0.3, 10);
		expect(value.refills).toBe(1);
	});
	test('one of which nobody noted the amount leaves no value, and says so', () => {
		const [titration] = tested(byFactor, {
			filled: [drawn({ sealMl: 1 })],
			titrated: [{ type: 'titrant.drawn', before: {}, sealMl: 1 }],
			read: [read({ sealMl: 0.62 })]
		}).titrations;
		expect(titration && valueOfTitration(titration, byFactor)).toEqual({
			titration: 0,
			value: null,
			why: 'Nobody noted how much the refill drew in.'
		});
	});
});

test('drops counted beside the mark stand beside its value: 24 drops of 0.021 mL are 0.504 mL', () => {
	const value = valued(kit, {
		filled: [drawn({ sealMl: 1 })],
		read: [read({ sealMl: 0.52, drops: 24 })]
	});
	const [byDrops] = value.otherwise;
	expect(byDrops?.by).toBe('drops');
	expect(byDrops?.value).toBeCloseTo(0.504 * 16 - 0.3, 6);
});

test('drops of a dropper bottle, and the level of a burette', () => {
	// 0.6 dKH a drop, less 0.45.
	expect(valued(houseDropperKit, { read: [read({ drops: 14 })] }).value).toBeCloseTo(7.95, 10);
	// 2.3 dKH a mL, less 0.19; a start beside 0 is counted from there. The table is printed to 0.01.
	const value = valued(houseBuretteKit, {
		filled: [{ type: 'titrant.drawn', levelMl: 0.2 }],
		read: [read({ levelMl: 3.7 })]
	});
	expect(value.value).toBeCloseTo(3.5 * 2.3 - 0.19, 2);
	expect(value.from).toBe('start');
});

test('a mark off the scale has no value, and says why', () => {
	const [titration] = tested(kit, { read: [read({ sealMl: 5.2 })] }).titrations;
	const value = titration && valueOfTitration(titration, kit);
	expect(value?.value).toBeNull();
	expect(value && 'why' in value && value.why).toMatch(/must lie on the scale.*found 5\.2/);
});

test('a value beyond the leaflet’s table says so', () => {
	// 16 dKH for each mL goes on from the last row: 0.6 mL are 9.3 dKH by hand, and 0.48 mL 7.38.
	const short: Kit = {
		...kit,
		conversion: {
			kind: 'rows',
			column: 'usedMl',
			rows: [0.1, 0.3, 0.5].map((at) => ({ at, value: 16 * at - 0.3 }))
		}
	};
	const at = (sealMl: number) =>
		valued(short, { filled: [drawn({ sealMl: 1 })], read: [read({ sealMl })] });
	expect(at(0.4)).toMatchObject({ isBeyondTable: true, value: expect.closeTo(9.3, 9) });
	expect(at(0.52)).toMatchObject({ isBeyondTable: false, value: expect.closeTo(7.38, 9) });
});

test('with the larger sample the same titrant is worth less: 6/10', () => {
	const value = valued(kit, {
		before: [{ type: 'sample.chosen', volumeId: 'fine' }],
		filled: [drawn({ sealMl: 1 })],
		read: [read({ sealMl: 0.52 })]
	});
	expect(value.value).toBeCloseTo(7.38 * 0.6, 10);
	expect(value.valuePerMl).toBeCloseTo(9.6, 6);
});
