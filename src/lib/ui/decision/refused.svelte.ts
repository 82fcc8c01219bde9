import { SvelteMap } from 'svelte/reactivity';
import { bandOf } from '$lib/judgement';
import type { CheckRun } from '../conversation/run';
import { salinityField } from './salinity-field';
import { bandFields, correctionFields, readTank, textsOf, type TankField } from './tank-fields';
import { unfinishedIn } from './unfinished';

/** The blanks of one group go by its fields: another unit has blanks of its own. */
export const partOf = (fields: readonly TankField[]): string =>
	fields.map(({ name, unit }) => `${name} ${unit ?? ''}`).join();

/** Labels of the blanks of the page whose text cannot be taken as it stands: no plan stands beside them. */
export class RefusedBlanks {
	readonly #byPart = new SvelteMap<string, readonly string[]>();

	put(part: string, labels: readonly string[]): void {
		this.#byPart.set(part, labels);
	}
	forget(part: string): void {
		this.#byPart.delete(part);
	}
	get labels(): readonly string[] {
		return [...this.#byPart.values()].flat();
	}
}

/** The same where the blanks themselves are not on the page: by what is kept of them. */
export function refusedOf({ log, state, unit: shown }: CheckRun): readonly string[] {
	const { tank } = state;
	const unit = tank.unit ?? shown;
	const groups = [
		bandFields(unit, log.analyte),
		[salinityField],
		correctionFields(unit, log.analyte, bandOf(tank, shown, log.analyte))
	];
	return groups.flatMap((fields) => {
		const texts = { ...textsOf(tank, fields), ...unfinishedIn(log.id, partOf(fields)) };
		const { problems } = readTank(texts, fields);
		return fields.flatMap(({ name, label }) => (problems[name] === undefined ? [] : [label]));
	});
}

/** Why there is no plan, in a sentence. */
export const refusedWords = (labels: readonly string[]): string =>
	`What stands at ${labels.map((label) => `“${label}”`).join(' and ')} cannot be taken as it is.`;
