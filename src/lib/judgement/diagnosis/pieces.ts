import { convertValue } from '../../kits';
import type { MethodFigures } from '../../metrology';
import type { Directions } from './directions';
import type { Families, Weights } from './families';
import type { Fault, FaultSize } from '../catalogue/fault';
import type { Model } from './model';
import type { WaterFigures } from './water-figures';

/** One way in which a fault comes out, ready to be put into the equation. */
export type Piece =
	/** So many of a direction, with a normal prior. */
	| { kind: 'shift'; direction: number; mean: number; variance: number; lnWeight: number }
	/** Worlds of a family by weight, for the rows of the mask (those that could be had among them). */
	| {
			kind: 'worlds';
			family: number;
			weights: Weights;
			mask: Uint8Array;
			lnWeight: number;
			/** What is worked out wrongly would be so in tests that could be had: times and plus, row by row. */
			reads?: { times: Float64Array; plus: Float64Array };
	  };

export type PieceContext = {
	model: Model;
	method: MethodFigures;
	water: WaterFigures;
	directions: Directions;
	families: Families;
};

const customary = ({ method, water }: PieceContext, value: number) =>
	convertValue(value, method.unit, water.unit, method.analyte);

/** mL of titrant that one of a size is; null where the kit has no such thing. */
function mlOf(of: FaultSize['of'], method: MethodFigures): number | null {
	switch (of) {
		case 'mL':
			return 1;
		case 'drops':
			return method.dropMl;
		case 'tips':
			return method.tipMl;
		case 'tipsEach':
			return method.tipMl === null ? null : method.tipMl * (method.filling?.count ?? 1);
		case 'tipsAgain':
			return method.tipMl === null || !method.filling
				? null
				: method.tipMl * (method.filling.count - 1);
		case 'fillings':
			return method.filling?.isAgain ? method.filling.ml : null;
		case 'divisions':
			return method.graduationMl;
		default:
			return null;
	}
}

/** How far one of a size shifts each reading it is in; null where the kit has no such thing. */
function shiftOf(
	fault: Pick<Fault, 'target'>,
	size: FaultSize,
	mask: Uint8Array,
	context: PieceContext
): Float64Array | null {
	const { model, method } = context;
	const at = (each: (i: number) => number) =>
		Float64Array.from(mask, (isIn, i) => (isIn ? each(i) : 0));
	const rowOf = (i: number) => model.rows[i]!;
	const nominalPerMl = customary(context, method.valuePerMl);
	if (size.of === 'customaryUnit')
		return fault.target === 'constant'
			? at((i) => rowOf(i).perMl / nominalPerMl)
			: fault.target === 'endPoint' || fault.target === 'arithmetic'
				? at((i) => (rowOf(i).perMl > 0 ? 1 : 0))
				: at(() => 1);
	if (size.of === 'share')
		return fault.target === 'reference'
			? at((i) => model.amountMean[i]!)
			: at((i) => model.value[i]! / (1 + size.mean));
	const ml = mlOf(size.of, method);
	if (ml === null) return null;
	// What was seen at the end counts alike in every sample; a volume counts less in more sample.
	return fault.target === 'endPoint'
		? at((i) => (rowOf(i).perMl > 0 ? nominalPerMl * ml : 0))
		: at((i) => rowOf(i).perMl * ml);
}

/** Readings put right that were worked out wrongly; null where the kit cannot be misread so. */
function putOf(size: FaultSize, mask: Uint8Array, context: PieceContext, key: string) {
	const { model, method, families } = context;
	const nominalPerMl = customary(context, method.valuePerMl);
	const value = model.value.slice();
	const variance = new Float64Array(model.size);
	const reads = {
		times: new Float64Array(model.size).fill(1),
		plus: new Float64Array(model.size)
	};
	let lnJacobian = 0;
	for (let i = 0; i < model.size; i++) {
		if (!mask[i]) continue;
		if (size.of === 'share') {
			const times = 1 + size.mean;
			if (!(times > 0)) return null;
			reads.times[i] = times;
		} else {
			if (method.fullScale === null) return null;
			const shrink = model.rows[i]!.perMl / nominalPerMl;
			reads.times[i] = -1;
			reads.plus[i] = customary(context, method.fullScale) * shrink + size.mean;
		}
		if (i >= model.count) continue;
		value[i] = (value[i]! - reads.plus[i]!) / reads.times[i]!;
		const sd = size.of === 'share' ? (size.sd / reads.times[i]!) * value[i]! : size.sd;
		variance[i] = sd ** 2;
		lnJacobian -= Math.log(Math.abs(reads.times[i]!));
	}
	const family = families.put(`${key} ${mask.slice(0, model.count).join('')}`, {
		value,
		variance,
		lnJacobian
	});
	return { ...family, reads };
}

function pieceOf(
	fault: Fault,
	size: FaultSize,
	mask: Uint8Array,
	context: PieceContext
): Piece | null {
	const { families, directions, model, water } = context;
	const usual = water.usual.mean;
	const lnWeight = Math.log(size.weight);
	const touches = mask.slice(0, model.count).some((isIn) => isIn === 1);
	const isFactor = size.of === 'share' && (fault.target === 'gain' || fault.target === 'water');
	const worlds = !touches
		? null
		: isFactor
			? families.factor(mask, size)
			: size.of === 'timesScatter'
				? families.scatter(mask, size.mean, size.sd)
				: size.of === 'otherWater'
					? families.otherWater(mask, size.mean * usual, size.sd * usual)
					: size.of === 'fullScaleLess' || (fault.target === 'arithmetic' && size.of === 'share')
						? putOf(size, mask, context, `${size.of} ${size.mean} ${size.sd}`)
						: undefined;
	if (worlds === null && touches) return null;
	if (worlds) return { kind: 'worlds', ...worlds, mask, lnWeight };
	const isInVial = fault.target === 'water' || fault.target === 'reference';
	const shift = touches ? shiftOf(fault, size, mask, context) : new Float64Array(model.size);
	if (!shift) return null;
	const { at, times } = directions.placeOf(shift, isInVial);
	return {
		kind: 'shift',
		direction: at,
		mean: size.mean * times,
		variance: (size.sd * times) ** 2,
		lnWeight
	};
}

const times = (size: FaultSize, by: number): FaultSize => ({
	...size,
	mean: size.mean * by,
	sd: size.sd * by
});

/**
 * A fault's sizes for this method: a share of all that is titrated is a larger one of what is left once
 * another value is taken off.
 */
function sizesFor(fault: Fault, { method }: PieceContext): readonly FaultSize[] {
	const { wholeOverValue } = method;
	const isOfWhole =
		fault.target === 'gain' || (fault.target === 'arithmetic' && !fault.isOfTheNumber);
	if (wholeOverValue === undefined || !isOfWhole) return fault.sizes;
	return fault.sizes.map((size) => (size.of === 'share' ? times(size, wholeOverValue) : size));
}

/** The ways in which a fault comes out with this kit; empty where it cannot. */
export function piecesOf(fault: Fault, mask: Uint8Array, context: PieceContext): Piece[] {
	return sizesFor(fault, context).flatMap((size) => pieceOf(fault, size, mask, context) ?? []);
}
