import * as fc from 'fast-check';
import {
	unitsOf,
	type Analyte,
	type Assumed,
	type Conversion,
	type Delivery,
	type Kit
} from '../../src/lib/kits';

/** Numbers as a leaflet prints them: so many steps of a last digit. */
const printed = (low: number, high: number, decimals: number) =>
	fc
		.integer({ min: Math.ceil(low * 10 ** decimals), max: Math.floor(high * 10 ** decimals) })
		.map((n) => Number((n / 10 ** decimals).toFixed(decimals)));
const words = fc
	.string({ minLength: 1, maxLength: 12 })
	.filter((text) => text.trim() === text && text !== '');
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const scale = fc.record({
	capacityMl: printed(0.5, 25, 1),
	lines: fc.constantFrom(5, 10, 20, 50, 100),
	linesANumeral: fc.constantFrom(1, 2, 5)
});
const scaleOf = ({
	capacityMl,
	lines,
	linesANumeral
}: {
	capacityMl: number;
	lines: number;
	linesANumeral: number;
}) => {
	const graduationMl = Number((capacityMl / lines).toFixed(6));
	return {
		capacityMl,
		graduationMl,
		numeralEveryMl: Number((graduationMl * linesANumeral).toFixed(6))
	};
};
const dropMl = printed(0.01, 0.09, 3);

const anyDelivery: fc.Arbitrary<Delivery> = fc.oneof(
	fc
		.record({
			scale,
			dropMl,
			barrel: printed(1, 2, 2),
			tipShare: maybe(printed(0, 0.9, 1)),
			way: fc.constantFrom('down' as const, 'up' as const)
		})
		.map(({ scale: lines, dropMl: drop, barrel, tipShare, way }) => {
			const { capacityMl, ...rest } = scaleOf(lines);
			return {
				by: 'syringe' as const,
				capacityMl,
				...rest,
				barrelEndMl: Number((capacityMl * barrel).toFixed(4)),
				tipVolumeMl:
					tipShare === undefined ? null : Number(Math.min(5, capacityMl * tipShare).toFixed(4)),
				scale: way,
				counts: 'used' as const,
				dropMl: drop
			};
		}),
	dropMl.map((drop) => ({ by: 'dropper' as const, dropMl: drop })),
	fc.record({ scale, dropMl }).map(({ scale: lines, dropMl: drop }) => ({
		by: 'burette' as const,
		...scaleOf(lines),
		dropMl: drop
	}))
);

/** A table in which the value grows with what is used, its rows in any order. */
function anyTable(delivery: Delivery): fc.Arbitrary<Conversion> {
	const columns =
		delivery.by === 'dropper'
			? (['drops', 'usedMl'] as const)
			: (['mark', 'usedMl', 'leftMl', 'drops'] as const);
	return fc
		.record({
			column: fc.constantFrom(...columns),
			places: fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 9 }),
			values: fc.uniqueArray(printed(0, 20, 1), { minLength: 9, maxLength: 9 }),
			keys: fc.array(fc.nat(), { minLength: 9, maxLength: 9 })
		})
		.map(({ column, places, values, keys }) => {
			const reach = column === 'drops' ? 40 : delivery.by === 'dropper' ? 2 : delivery.capacityMl;
			const falls =
				column === 'leftMl' ||
				(column === 'mark' && delivery.by === 'syringe' && delivery.scale === 'down');
			const marks = places.map((place) => Number(((place / 40) * reach).toFixed(4)));
			marks.sort((a, b) => (falls ? b - a : a - b));
			const rising = [...values].sort((a, b) => a - b);
			const rows = marks.map((at, i) => ({
				at,
				value: rising[i] ?? 0,
				key: keys[i] ?? 0
			}));
			rows.sort((a, b) => a.key - b.key);
			return { kind: 'rows' as const, column, rows: rows.map(({ at, value }) => ({ at, value })) };
		});
}

const anyConversion = (delivery: Delivery): fc.Arbitrary<Conversion> => {
	const offset = printed(-0.7, 0.7, 2);
	const perDrop = fc.record({
		kind: fc.constant('perDrop' as const),
		valuePerDrop: printed(0.05, 2, 2),
		offset
	});
	const perMl = fc.record({
		kind: fc.constant('perMl' as const),
		valuePerMl: printed(0.5, 40, 2),
		offset
	});
	return delivery.by === 'dropper'
		? fc.oneof(anyTable(delivery), perDrop)
		: fc.oneof(anyTable(delivery), perDrop, perMl);
};

const share = maybe(printed(0, 0.5, 4));
const anyAssumed: fc.Arbitrary<Assumed> = fc
	.record({
		sampleHalfWidth: share,
		deliveryHalfWidth: share,
		dropSd: share,
		titrantSd: share,
		colourDrops: maybe(printed(0, 2, 2)),
		tipSdMl: maybe(printed(0, 0.2, 3))
	})
	.map(
		(own) =>
			Object.fromEntries(
				Object.entries(own).filter(([, figure]) => figure !== undefined)
			) as Assumed
	);

const anyReagent = fc.record({
	name: words,
	role: fc.constantFrom('indicator' as const, 'base' as const, 'buffer' as const),
	dose: fc.oneof(
		fc.record({ amount: fc.integer({ min: 1, max: 20 }), unit: fc.constant('drop' as const) }),
		fc.record({ amount: printed(0.1, 5, 1), unit: fc.constant('mL' as const) }),
		fc.record({
			amount: printed(0.5, 3, 1),
			unit: fc.constant('spoon' as const),
			unitMl: printed(0.05, 1, 2)
		})
	),
	mixSeconds: fc.integer({ min: 0, max: 600 }),
	waitSeconds: fc.integer({ min: 0, max: 600 })
});

/** What it measures, in any of the units that this may be given in. */
const anyMeasured = fc
	.constantFrom<Analyte>('alkalinity', 'calcium', 'hardness', 'magnesium')
	.chain((analyte) => fc.constantFrom(...unitsOf(analyte)).map((unit) => ({ analyte, unit })));

/** Any kit that a leaflet could describe; its figures are made up. */
export const anyKit: fc.Arbitrary<Kit> = anyDelivery.chain((delivery) =>
	fc
		.record({
			name: words,
			measured: anyMeasured,
			isForDifference: fc.boolean(),
			isRefilled: fc.boolean(),
			sampleMl: printed(1, 50, 1),
			finer: fc.array(printed(0.5, 50, 1), { maxLength: 2 }),
			measuredIn: fc.constantFrom('syringe' as const, 'vialLine' as const),
			reagents: fc.array(anyReagent, { maxLength: 3 }),
			conversion: anyConversion(delivery),
			endPoint: fc
				.record({
					startColour: words,
					endColour: words,
					holdsSeconds: fc.integer({ min: 1, max: 120 })
				})
				.filter((each) => each.startColour.toLowerCase() !== each.endColour.toLowerCase()),
			// Within what may be claimed in any of the units.
			statedAccuracy: maybe(printed(0.9, 2, 1)),
			hazards: fc.array(words, { maxLength: 3 }),
			assumed: anyAssumed
		})
		.map(
			({
				measured,
				isForDifference,
				isRefilled,
				sampleMl,
				finer,
				measuredIn,
				statedAccuracy,
				assumed,
				reagents,
				conversion,
				...rest
			}): Kit => {
				let volumeMl = sampleMl;
				const larger = finer.map((more) => (volumeMl = Number((volumeMl + more).toFixed(1))));
				const isLeft = conversion.kind === 'rows' && conversion.column === 'leftMl';
				const volumes = [sampleMl, ...larger].map((ml, i) => ({
					id: `volume-${i}`,
					name: `${i}: ${ml} mL`,
					volumeMl: ml
				}));
				return {
					format: 1,
					id: 'any',
					invented: true,
					...measured,
					...(isForDifference && measured.analyte === 'hardness'
						? { byDifference: { gives: 'magnesium', less: 'calcium' } }
						: {}),
					...rest,
					sample: { volumes, measuredIn },
					reagents: reagents.map((reagent, i) => ({ id: `r${i}`, ...reagent })),
					delivery: {
						...delivery,
						...(delivery.by === 'syringe' ? { counts: isLeft ? 'left' : 'used' } : {}),
						...(delivery.by !== 'dropper' && isRefilled ? { refilled: true } : {})
					} as Delivery,
					conversion,
					...(statedAccuracy === undefined ? {} : { statedAccuracy }),
					...(Object.keys(assumed).length === 0 ? {} : { assumed })
				};
			}
		)
);
