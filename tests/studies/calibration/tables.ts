import type { DiagnoseOptions } from '../../../src/lib/judgement';
import { astrayCase, benchCase } from './bench-cases';
import type { CalibrationCase } from './case';
import { judge, type Judged } from './judge';
import { checkInOrder, orders, type Ordered } from './orders';
import { outsideCase } from './outside-cases';
import { priorCase } from './prior-cases';
import { seedOf } from './seeds';

/** Where the cases of a table come from. */
export const tables = {
	prior: {
		title: '1 · drawn from the model’s own prior',
		caseAt: (index: number, seed: number) => priorCase(index, seed)
	},
	bench: { title: '2 · played on the practice bench', caseAt: benchCase },
	astray: { title: '3 · the model is wrong about the world', caseAt: astrayCase },
	calcium: {
		title: 'calcium · drawn from the model’s own prior',
		caseAt: (index: number, seed: number) => priorCase(index, seed, 'calcium')
	},
	magnesium: {
		title: 'magnesium · drawn from the model’s own prior',
		caseAt: (index: number, seed: number) => priorCase(index, seed, 'magnesium')
	},
	outside: { title: '4 · from a bench that knows nothing of the model', caseAt: outsideCase }
} satisfies Record<
	string,
	{ title: string; caseAt: (index: number, seed: number) => CalibrationCase }
>;
export type TableId = keyof typeof tables;
export const tableIds = Object.keys(tables) as TableId[];

/** In which values of a table stand. */
export const unitIn = (table: TableId) => tables[table].caseAt(0, 0).band.unit;

/** Some cases of a table, judged or checked one after the other. */
export type Task = {
	table: TableId;
	of: 'judged' | 'ordered';
	from: number;
	to: number;
	seed: number;
	options?: DiagnoseOptions;
};
export type Done = { judged: Judged[]; ordered: Ordered[] };

/** To be certain of a cause takes long where it is reached at all: one case in ten is enough of it. */
const isWaitedFor = (index: number) => index % 10 === 3;

/** Works on one task; the same for ever, whoever does it and in whatever pieces. */
export function workOn({ table, of, from, to, seed, options }: Task): Done {
	const { caseAt } = tables[table];
	const done: Done = { judged: [], ordered: [] };
	for (let index = from; index < to; index++) {
		if (of === 'judged') done.judged.push(judge(caseAt(index, seed), options));
		else
			for (const order of orders)
				// A case of its own for each order: what a check finds must not depend on the others'.
				done.ordered.push(
					checkInOrder(caseAt(index, seed), order, seedOf(seed, table, index), isWaitedFor(index))
				);
	}
	return done;
}
