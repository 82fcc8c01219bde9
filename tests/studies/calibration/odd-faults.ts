import type { BenchFault } from './bench-faults';
import { between, sign } from './seeds';

const odd = { id: null } as const;

/** What stands in no list of ours. Sizes: judgement. */
export const oddBenchFaults: readonly BenchFault[] = [
	{
		...odd,
		name: 'two figures of the value swapped',
		class: 'technique',
		keeps: 'once',
		draw: () => ({
			value: (value) => {
				const [whole = '0', tenth = '0'] = value.toFixed(1).split('.');
				const last = whole.slice(-1);
				return Number(`${whole.slice(0, -1)}${tenth}.${last}`);
			}
		})
	},
	{
		...odd,
		name: 'sample stood open and grew denser',
		class: 'sampling',
		keeps: 'portion',
		draw: (chance) => {
			const factor = between(chance, 1.05, 1.15);
			return {
				water: (water) => ({
					...water,
					alkalinityDkh: water.alkalinityDkh * factor,
					salinity: Math.min(45, water.salinity * factor)
				})
			};
		}
	},
	{
		...odd,
		name: 'leaflet made for another water',
		class: 'method',
		keeps: 'kit',
		draw: (chance) => {
			const dkh = -between(chance, 0.3, 0.8);
			return { value: (value) => value + dkh };
		}
	},
	{
		...odd,
		name: 'leaflet of an older strength of the kit',
		class: 'method',
		alsoFair: ['reagent'],
		keeps: 'kit',
		draw: (chance) => {
			const factor = 1 + sign(chance) * between(chance, 0.06, 0.15);
			return { value: (value) => value * factor };
		}
	},
	{
		...odd,
		name: 'value from memory',
		class: 'technique',
		keeps: 'once',
		draw: (chance) => {
			const dkh = 0.9 * chance.normal();
			return { value: (value) => value + dkh };
		}
	}
];
