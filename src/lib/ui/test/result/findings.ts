import { slipWords } from '$lib/judgement';
import type { Unit } from '$lib/kits';
import { remarksOn, slipsAtTank, type Remark } from '$lib/procedure';
import type { TankRun } from '../run';

/** Something that was found on the way: said once, in few words. */
export type Finding = {
	id: string;
	text: string;
	tone: Remark['tone'];
	/** By how much the value may be off, without sign, in the kit's unit; null where nobody knows. */
	costValue: number | null;
	unit: Unit;
	/** Which titration, where there are several. */
	titration: number | null;
};

/**
 * Remarks and slips of the titrations that count, the pressing ones first. A slip that a remark speaks
 * of already is not named again.
 */
export function findingsOf(run: Pick<TankRun, 'state' | 'kit' | 'expected' | 'now'>): Finding[] {
	const { titrations, circumstances } = run.state;
	const several = titrations.length > 1;
	const found = titrations
		.filter(({ setAsideBecause }) => setAsideBecause === null)
		.flatMap((titration): Finding[] => {
			const of = { unit: run.kit.unit, titration: several ? titration.number : null };
			const { expected } = run;
			const remarks = remarksOn(titration, { at: run.now(), expected, circumstances });
			const slips = slipsAtTank(titration, circumstances).filter(({ provisional }) => !provisional);
			const said = remarks.map(({ id, text, tone, costValue }) => ({
				...of,
				id: `${titration.number} ${id}`,
				text,
				tone,
				costValue: costValue ?? null
			}));
			if (said.some(({ tone }) => tone === 'warn')) return said;
			return [
				...slips.map((slip) => {
					const { name, remedy } = slipWords(slip);
					const text = `${name}. ${remedy}`;
					return {
						...of,
						id: `${titration.number} ${slip.kind}`,
						text,
						tone: 'warn' as const,
						costValue: null
					};
				}),
				...said
			];
		});
	return [
		...found.filter(({ tone }) => tone === 'warn'),
		...found.filter(({ tone }) => tone === 'say')
	];
}
