import type { BenchFault } from './bench-faults';
import { bothWays } from './bench-faults-filling';
import { between, sign } from './seeds';

const technique = { class: 'technique' } as const;
/** Sample volume that the kit asks for. */
const nominalMl = (volumes: readonly { volumeMl: number }[]) => volumes[0]?.volumeMl ?? Number.NaN;

/** The sample, and the way to the end. Sizes: common practice, no source. */
export const endFaults: readonly BenchFault[] = [
	...bothWays({
		...technique,
		id: 'stoppedAtFlash',
		draw: (chance, { delivery }) => ({
			// Drops of a bottle are twice as large: a flash holds over fewer of them.
			plan: {
				dropsPastEnd: -Math.ceil((delivery.by === 'syringe' ? 4 : 2) * chance.uniform())
			}
		})
	}),
	{
		...technique,
		id: 'overshot',
		keeps: 'once',
		draw: (chance) => ({ plan: { dropsPastEnd: Math.ceil(3 * chance.uniform()) } })
	},
	{
		...technique,
		id: 'otherShade',
		keeps: 'hands',
		draw: (chance) => ({
			household: {
				colourDrops: chance.uniform() < 0.7 ? between(chance, 1, 2.5) : -between(chance, 0.7, 1.2)
			}
		})
	},
	{
		...technique,
		id: 'chasedColour',
		keeps: 'hands',
		draw: (chance) => ({ plan: { chaseRounds: Math.round(between(chance, 4, 12)) } })
	},
	{
		...technique,
		id: 'swirledOddly',
		keeps: 'hands',
		draw: (chance) => ({
			plan: { swirlMs: chance.uniform() < 0.6 ? 0 : Math.round(between(chance, 8000, 15_000)) }
		})
	},
	{
		...technique,
		id: 'indicatorDose',
		keeps: 'once',
		draw: (chance) => ({ plan: { extraIndicator: chance.uniform() < 0.6 ? 1 : 2 } })
	},
	{
		...technique,
		id: 'dropperTilted',
		keeps: 'hands',
		deliveries: ['dropper'],
		draw: (chance) => ({ plan: { tiltDegrees: between(chance, 30, 60) } })
	},
	{
		...technique,
		id: 'dropperSqueezed',
		keeps: 'hands',
		deliveries: ['dropper'],
		draw: () => ({ plan: { squeezedHard: true } })
	},
	...bothWays({
		...technique,
		id: 'sampleBesideMark',
		draw: (chance, { sample }) => ({
			plan: { sampleOffMl: sign(chance) * between(chance, 0.015, 0.04) * nominalMl(sample.volumes) }
		})
	}),
	{
		...technique,
		id: 'sampleAir',
		keeps: 'once',
		deliveries: ['syringe', 'burette'],
		draw: (chance, { sample }) => ({
			plan: { sampleAirMl: between(chance, 0.02, 0.1) * nominalMl(sample.volumes) }
		})
	},
	{
		...technique,
		id: 'sampleWareWet',
		keeps: 'hands',
		draw: (_, { sample }) => ({
			plan:
				sample.measuredIn === 'syringe' ? { rinseSampler: 'purified' } : { rinseVial: 'purified' }
		})
	}
];
