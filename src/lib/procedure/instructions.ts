import type { Kit, Step } from '../kits';

/** What a step asks, and the trap that lies in it. */
export type Instruction = { text: string; trap: string | null };

const amountOf = (step: Extract<Step, { kind: 'dose' }>) =>
	step.unit === 'mL'
		? `${step.amount} mL`
		: `${step.amount} ${step.unit}${step.amount === 1 ? '' : 's'}`;

type Sayers = {
	[Kind in Step['kind']]: (
		step: Extract<Step, { kind: Kind }>,
		kit: Kit,
		sampleVolumeMl: number
	) => Instruction;
};

const sayers: Sayers = {
	choose: () => ({
		text: 'Choose how much water to test.',
		trap: 'More water makes each drop count for less.'
	}),
	rinse: (step) => ({
		text:
			step.ware === 'vial'
				? 'Rinse the vial with tank water and shake it out.'
				: 'Rinse the sample syringe with tank water.',
		trap: 'Water of another kind that stays behind thins the sample.'
	}),
	measure: (step, _kit, sampleVolumeMl) =>
		step.measuredIn === 'syringe'
			? {
					text: `Draw ${sampleVolumeMl} mL of sample and empty the syringe into the vial.`,
					trap: 'A bubble inside takes the place of water.'
				}
			: {
					text: `Fill the vial with tank water to its ${sampleVolumeMl} mL line.`,
					trap: 'The bottom of the curved surface stands on the line.'
				},
	dose: (step, kit) => {
		const reagent = kit.reagents.find((each) => each.id === step.reagentId);
		return {
			text: `Add ${amountOf(step)} of ${reagent?.name ?? step.reagentId}.`,
			trap: 'Count aloud; nobody else does.'
		};
	},
	mix: (step) => ({ text: `Swirl gently for about ${step.seconds} seconds.`, trap: null }),
	wait: (step) => ({ text: `Let it stand for ${step.seconds} seconds.`, trap: null }),
	fill: (step) =>
		step.by === 'syringe'
			? {
					text: `Put the tip on and fill until the seal stands at ${step.toMl.toFixed(2)}.`,
					trap: 'Air from the tip lies between seal and liquid: that is right.'
				}
			: {
					text: 'Fill the burette to 0 and see that no air is in its tip.',
					trap: 'Air in the tip leaves later and counts as acid.'
				},
	titrate: (step, kit) => ({
		text: `Add drops and swirl until ${kit.endPoint.endColour} stays ${step.holdsSeconds} seconds.`,
		trap: 'In white light. Single drops once a flash takes 3 s to fade.'
	}),
	read: (step) =>
		({
			mark: {
				text: 'Read where the seal stands, then look up the value.',
				trap: 'Eye level; the rim nearest the tip; which end is 0?'
			},
			drops: { text: 'Write down how many drops it took, then work out the value.', trap: null },
			level: {
				text: 'Read the level in the burette, then look up the value.',
				trap: 'Eye level with the bottom of the curve.'
			}
		})[step.what]
};

/**
 * Plain words for a step of this kit, at most fourteen, and as few for the trap in it.
 *
 * @param sampleVolumeMl of the sample in use; the kit's nominal one when left out
 */
export function instructionFor(step: Step, kit: Kit, sampleVolumeMl?: number): Instruction {
	const say = sayers[step.kind] as (each: Step, of: Kit, volumeMl: number) => Instruction;
	return say(step, kit, sampleVolumeMl ?? kit.sample.volumes[0]?.volumeMl ?? 0);
}
