import type { BenchFault, Keeps } from './bench-faults';
import { between, sign } from './seeds';

const technique = { class: 'technique' } as const;
const syringe = ['syringe'] as const;
const withScale = ['syringe', 'burette'] as const;

/** A slip as a habit and as a single one; the catalogue tells them apart by name. */
export const bothWays = (fault: Omit<BenchFault, 'keeps'>): BenchFault[] =>
	(['hands', 'once'] satisfies Keeps[]).map((keeps) => ({
		...fault,
		id: keeps === 'once' ? `${fault.id}Once` : fault.id,
		keeps
	}));
const graduationOf = (delivery: { graduationMl?: number }) => delivery.graduationMl ?? Number.NaN;

/** Filling and reading. Sizes: common practice, no source; the bench makes the values of them. */
export const fillingFaults: readonly BenchFault[] = [
	...bothWays({
		...technique,
		id: 'filledByLine',
		deliveries: syringe,
		draw: () => ({ plan: { fillBy: 'line' } })
	}),
	...bothWays({
		...technique,
		id: 'readByLine',
		deliveries: syringe,
		draw: () => ({ plan: { readBy: 'line' } })
	}),
	...bothWays({
		...technique,
		id: 'tipFittedLate',
		deliveries: syringe,
		draw: () => ({ plan: { tipFitted: 'after' } })
	}),
	{
		...technique,
		id: 'tipLoose',
		keeps: 'once',
		deliveries: syringe,
		draw: () => ({ plan: { tipFitted: 'loose' } })
	},
	{
		...technique,
		id: 'airLeft',
		keeps: 'once',
		deliveries: syringe,
		draw: (chance) => ({ plan: { airDrawnMl: between(chance, 0.01, 0.05) } })
	},
	{
		...technique,
		id: 'hangingAtStart',
		keeps: 'once',
		deliveries: withScale,
		draw: () => ({ plan: { wiped: false } })
	},
	{
		...technique,
		id: 'hangingAtEnd',
		keeps: 'once',
		deliveries: withScale,
		draw: () => ({ plan: { touchedOff: false } })
	},
	...bothWays({
		...technique,
		id: 'titrantWareWet',
		deliveries: withScale,
		draw: (chance) => ({ strength: 1 / (1 + between(chance, 0.02, 0.06)) })
	}),
	{
		...technique,
		id: 'wrongRim',
		keeps: 'hands',
		deliveries: syringe,
		draw: (chance) => ({ plan: { readOff: sign(chance) * between(chance, 0.03, 0.08) } })
	},
	{
		...technique,
		id: 'wrongTick',
		keeps: 'once',
		deliveries: withScale,
		draw: (chance, { delivery }) => ({
			plan: {
				readOff:
					sign(chance) *
					Math.ceil(5 * chance.uniform()) *
					graduationOf(delivery as { graduationMl?: number })
			}
		})
	},
	{
		...technique,
		id: 'parallax',
		keeps: 'hands',
		deliveries: withScale,
		draw: (chance, { delivery }) => ({
			plan: {
				readOff:
					sign(chance) *
					between(chance, 0.2, 0.8) *
					graduationOf(delivery as { graduationMl?: number })
			}
		})
	},
	...bothWays({
		...technique,
		id: 'usedForLeft',
		deliveries: syringe,
		draw: () => ({ plan: { scaleReversed: true } })
	}),
	{
		...technique,
		id: 'dropsMiscounted',
		keeps: 'once',
		deliveries: ['dropper'],
		draw: (chance) => ({ plan: { readOff: sign(chance) * (chance.uniform() < 0.7 ? 1 : 2) } })
	},
	{
		...technique,
		id: 'unitTaken',
		keeps: 'once',
		draw: (chance) => {
			// 1 meq/L is 2.804 dKH and 50.04 mg/L of CaCO3; 1 dKH is 1.253 English and 1.785 French degrees.
			const ratio = [2.804, 1 / 2.804, 17.85, 1 / 17.85, 1.253, 1.785][
				Math.floor(6 * chance.uniform())
			];
			return { value: (value) => value * (ratio ?? 1) };
		}
	},
	{
		...technique,
		id: 'wrongRow',
		keeps: 'once',
		draw: (chance) => {
			const ratio = [2, 0.5, 10 / 6, 0.6][Math.floor(4 * chance.uniform())];
			return { value: (value) => value * (ratio ?? 1) };
		}
	}
];
