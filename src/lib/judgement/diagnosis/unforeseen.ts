import type { Directions } from './directions';
import type { FaultScope } from '../catalogue/fault';
import { ordinaryWorld, type Model, type World } from './model';
import { BESIDES, UNFORESEEN, type Part } from './parts';
import { maskOf, seatsOf } from './scope';
import type { WaterFigures } from './water-figures';

/** Things in which something may be wrong that is in no list. */
const places: readonly FaultScope[] = [
	'oneTest',
	'hands',
	'sampleWare',
	'titrantWare',
	'lot',
	'kit',
	'sampling',
	'solution',
	'instrument'
];
/** So much wider tests may fall when something unknown is at work; judgement. */
const TIMES_SCATTER = 1.5;
/** A test that is not in question may have gone astray by a slip of its own; judgement. */
const SLIP_ELSEWHERE = 0.05;

export const unforeseenWorld = (model: Model): World => ({
	...ordinaryWorld,
	timesScatter: new Float64Array(model.size).fill(TIMES_SCATTER)
});

/** A reading of 1 and one of 8 may be off by the same share. */
const asShare = (model: Model, water: WaterFigures, i: number) =>
	model.rows[i]!.weighed ? 1 / water.usual.mean : 1;

/** What no list has, in each thing that it may sit in; together as likely as `prior`. */
export function unforeseenParts(
	model: Model,
	directions: Directions,
	water: WaterFigures,
	prior: number
): Part[] {
	const read = model.rows.slice(0, model.count);
	const seats = places.flatMap((scope) => seatsOf(scope, read).map((seat) => ({ scope, seat })));
	return seats.map(({ scope, seat }): Part => {
		const mask = maskOf({ scope, target: 'gain', shownBy: [] }, model.rows, seat);
		const shift = Float64Array.from(mask, (isIn, i) => (isIn ? asShare(model, water, i) : 0));
		const { at, times } = directions.placeOf(shift, scope === 'sampling' || scope === 'solution');
		return {
			fault: UNFORESEEN,
			lnOdds: Math.log(prior / (1 - prior) / seats.length),
			piece: {
				kind: 'shift',
				direction: at,
				mean: 0,
				variance: (water.unforeseenSd * times) ** 2,
				lnWeight: 0
			}
		};
	});
}

/** A slip of its own in each test by the kit that is not in question. */
export function slipsElsewhere(model: Model, directions: Directions, water: WaterFigures): Part[] {
	return model.rows.slice(0, model.count).flatMap((row, i): Part[] => {
		if (row.isInQuestion || row.things.kit === null) return [];
		const shift = new Float64Array(model.size);
		shift[i] = 1;
		const { at } = directions.placeOf(shift, false);
		return [
			{
				fault: BESIDES,
				lnOdds: Math.log(SLIP_ELSEWHERE / (1 - SLIP_ELSEWHERE)),
				piece: {
					kind: 'shift',
					direction: at,
					mean: 0,
					variance: water.unforeseenSd ** 2,
					lnWeight: 0
				}
			}
		];
	});
}

/** The world in which a test that is not in question went astray by a slip of its own. */
export function slippedWorld(
	model: Model,
	directions: Directions,
	water: WaterFigures,
	part: Part
): World {
	const { piece } = part;
	const shift = piece.kind === 'shift' ? directions.all[piece.direction]!.shift : null;
	const timesScatter = Float64Array.from({ length: model.size }, (_, i) =>
		shift?.[i] ? Math.sqrt(1 + water.unforeseenSd ** 2 / model.scatter[i]!) : 1
	);
	return { ...ordinaryWorld, timesScatter };
}
