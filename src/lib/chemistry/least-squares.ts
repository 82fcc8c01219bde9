import { levenbergMarquardt } from 'ml-levenberg-marquardt';

/** A model of readings that are already divided by their standard deviations. */
export type WeighedModel = {
	observed: readonly number[];
	/** Value at each point, and its derivatives by each parameter. */
	at: (parameters: readonly number[]) => { values: number[]; jacobian: number[][] };
	lowest: readonly number[];
	highest: readonly number[];
};

export type LeastSquares = {
	parameters: number[];
	/** Sum of the squares of observed less model, in standard deviations. */
	chiSquare: number;
	/** Inverse of JᵀJ: the covariance of the parameters, if the standard deviations are true. */
	covariance: number[][];
	/** Derivatives at the end, a row for each point. */
	jacobian: number[][];
	isConverged: boolean;
};

const ROUNDS = 20;
const STEPS_A_ROUND = 2;
/** A step left to go below this share of the parameter's own uncertainty, or below this, is none. */
const STEP_SHARE = 1e-4;
const STEP_NOTHING = 1e-8;

/**
 * Inverse of a symmetric positive matrix of a few rows (Gauss and Jordan), its rows and columns first
 * brought to one size. Entries come out infinite or NaN where there is none.
 */
export function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
	const size = matrix.map((row, i) => Math.sqrt(row[i]!));
	const n = matrix.length;
	const rows = matrix.map((row, i) => [
		...row.map((value, j) => value / (size[i]! * size[j]!)),
		...row.map((_, j) => (i === j ? 1 : 0))
	]);
	for (let k = 0; k < n; k++) {
		const pivot = rows[k]![k]!;
		rows[k] = rows[k]!.map((value) => value / pivot);
		for (let i = 0; i < n; i++) {
			if (i === k) continue;
			const factor = rows[i]![k]!;
			rows[i] = rows[i]!.map((value, j) => value - factor * rows[k]![j]!);
		}
	}
	return rows.map((row, i) => row.slice(n).map((value, j) => value / (size[i]! * size[j]!)));
}

/** rowᵀ · matrix · row. */
export const quadraticForm = (
	row: readonly number[],
	matrix: readonly (readonly number[])[]
): number =>
	row.reduce(
		(sum, a, i) => sum + a * row.reduce((inner, b, j) => inner + matrix[i]![j]! * b, 0),
		0
	);

/**
 * Non-linear least squares by Levenberg and Marquardt.
 *
 * The library's solver does not know when it has arrived and may end in a bad step, so it is asked for
 * a few steps at a time, from the best place so far, until a plain step of Gauss and Newton would
 * change nothing that matters.
 */
export function leastSquares(model: WeighedModel, start: readonly number[]): LeastSquares {
	const { observed } = model;
	const data = { x: observed.map((_, i) => i), y: [...observed] };
	let last: { key: string; values: number[]; jacobian: number[][] } | null = null;
	const at = (parameters: readonly number[]) => {
		const key = parameters.join();
		if (last?.key !== key) last = { key, ...model.at(parameters) };
		return last;
	};
	const chiSquareOf = (values: readonly number[]) =>
		values.reduce((sum, value, i) => sum + (observed[i]! - value) ** 2, 0);
	const normalOf = (jacobian: readonly number[][]) =>
		start.map((_, a) => start.map((_, b) => jacobian.reduce((s, row) => s + row[a]! * row[b]!, 0)));

	let parameters = [...start];
	let chiSquare = chiSquareOf(at(parameters).values);
	let damping = 1e-2;
	for (let round = 0; ; round++) {
		const { values, jacobian } = at(parameters);
		const covariance = inverseOf(normalOf(jacobian));
		const gradient = start.map((_, a) =>
			jacobian.reduce((sum, row, i) => sum + row[a]! * (observed[i]! - values[i]!), 0)
		);
		const isConverged = covariance.every((row, a) => {
			const step = row.reduce((sum, value, b) => sum + value * gradient[b]!, 0);
			const isAtEdge =
				(parameters[a]! <= model.lowest[a]! && step < 0) ||
				(parameters[a]! >= model.highest[a]! && step > 0);
			return isAtEdge || Math.abs(step) < STEP_SHARE * Math.sqrt(row[a]!) + STEP_NOTHING;
		});
		// Points that leave a parameter open have no covariance; nothing is to be found there.
		const isOpen = !covariance.every((row) => row.every(Number.isFinite));
		if (isConverged || isOpen || round >= ROUNDS)
			return { parameters, chiSquare, covariance, jacobian, isConverged };

		const found = levenbergMarquardt(
			data,
			(p) => {
				const model = at(p).values;
				return (i) => model[i]!;
			},
			{
				initialValues: parameters,
				minValues: model.lowest,
				maxValues: model.highest,
				jacobianFunction: (p) => {
					const rows = at(p).jacobian;
					return (i) => rows[i]!;
				},
				damping,
				maxIterations: STEPS_A_ROUND,
				errorTolerance: 1e-18
			}
		);
		// No better by bold steps: shorter ones.
		if (!(found.parameterError < chiSquare)) damping *= 1000;
		else {
			parameters = found.parameterValues;
			chiSquare = found.parameterError;
			damping = 1e-2;
		}
	}
}
