import { describe, expect, test } from 'vitest';
import { houseKits } from '../../../src/lib/kits';
import { LIFE_SIZE_PX_PER_ML } from '../../../src/lib/ui/bench/drawing/drop-shape';
import { FLANGE, TIP_LENGTH } from '../../../src/lib/ui/bench/drawing/syringe-shape';
import { BOTTLE_HEIGHT, layOutStage, type BenchView } from '../../../src/lib/ui/bench/layout';

const views: BenchView[] = ['sample', 'dose', 'fill', 'drop', 'read'];
const stages = [
	{ name: 'phone', width: 390, height: 440 },
	{ name: 'narrow', width: 320, height: 400 },
	{ name: 'low', width: 390, height: 260 },
	{ name: 'desk', width: 896, height: 756 },
	{ name: 'wide', width: 1500, height: 1000 }
];

describe.each(stages)('on a $name stage', ({ width, height }) => {
	describe.each(houseKits.map((kit) => [kit.delivery.by, kit] as const))(
		'with a %s',
		(_by, kit) => {
			test.each(views)('in the view %s nothing stands outside', (view) => {
				const { vial, magnifier, delivery, eye } = layOutStage(view, kit.delivery, width, height);
				expect(vial.x - vial.width / 2).toBeGreaterThanOrEqual(0);
				expect(vial.x + vial.width / 2).toBeLessThanOrEqual(width);
				expect(vial.y).toBeLessThanOrEqual(height);
				expect(magnifier.x).toBeGreaterThanOrEqual(0);
				expect(magnifier.x + magnifier.size).toBeLessThanOrEqual(width);
				expect(eye.x + 44).toBeLessThanOrEqual(width);
				expect(delivery.pxPerMl).toBeLessThanOrEqual(LIFE_SIZE_PX_PER_ML + 1e-9);
			});
			test('drops fall from above the rim into the vial', () => {
				const { vial, delivery } = layOutStage('drop', kit.delivery, width, height);
				const endY = delivery.y + (kit.delivery.by === 'syringe' ? TIP_LENGTH : 0);
				expect(delivery.x).toBe(vial.x);
				expect(endY).toBeLessThan(vial.y - vial.height);
			});
			test('the comparison vial stands beside the first, not behind it', () => {
				const { vial, comparison } = layOutStage('drop', kit.delivery, width, height);
				expect(comparison.x - vial.x).toBeGreaterThan(vial.width);
				expect(comparison.x + vial.width / 2).toBeLessThanOrEqual(width);
			});
		}
	);
});

describe('a syringe that is being filled', () => {
	const kit = houseKits.find((each) => each.delivery.by === 'syringe')!;
	if (kit.delivery.by !== 'syringe') throw new Error('the syringe kit delivers by syringe');
	const { barrelEndMl, capacityMl } = kit.delivery;

	test('keeps its thumb rest in sight when drawn to the full mark on a phone', () => {
		const { delivery } = layOutStage('fill', kit.delivery, 390, 440);
		const flangeY = delivery.y - barrelEndMl * delivery.pxPerMl;
		expect(flangeY - FLANGE - capacityMl * delivery.pxPerMl).toBeGreaterThan(-8);
	});
	test('dips its tip below the mouth of the bottle', () => {
		const { delivery, bottle } = layOutStage('fill', kit.delivery, 390, 440);
		expect(delivery.y + TIP_LENGTH).toBeGreaterThan(bottle.y);
		expect(delivery.y + TIP_LENGTH).toBeLessThan(bottle.y + BOTTLE_HEIGHT);
	});
	test('is life-size to read where there is room', () => {
		expect(layOutStage('read', kit.delivery, 896, 756).delivery.pxPerMl).toBeCloseTo(
			(57 / 25.4) * 96,
			6
		);
	});
});
