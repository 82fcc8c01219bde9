import type { Fault } from './fault';
import { about, alkalinity, eitherWay, mixed, onceOf } from './make-fault';

/**
 * A trace that the first test takes up and pours away with it: in the vial this once, or left there
 * anew before each test. A repeat in the same vial shows the one and hides the other.
 */
const traceInVial = (
	trace: Pick<Fault, 'id' | 'name' | 'sizes' | 'remedy' | 'origin'>,
	prior: { eachTime: number; once: number }
): Fault[] => {
	const common = { ...trace, class: 'ware', target: 'constant', analytes: alkalinity } as const;
	return [
		{
			...common,
			name: `${trace.name}, each time`,
			scope: 'sampleWare',
			prior: prior.eachTime,
			shownBy: ['blank', 'largerSample']
		},
		{
			...common,
			id: onceOf(trace.id),
			name: `${trace.name}, this once`,
			scope: 'oneTest',
			prior: prior.once,
			shownBy: ['repeatFull', 'repeatQuick']
		}
	];
};

/** What can be wrong with syringe, dropper and vial. */
export const wareFaults: readonly Fault[] = [
	{
		id: 'sealSticks',
		name: 'seal that sticks and jumps',
		class: 'ware',
		target: 'constant',
		scope: 'titrantWare',
		analytes: alkalinity,
		deliveries: ['syringe'],
		sizes: about(1.7, 0.8, 'drops'),
		prior: 0.015,
		remedy: 'Take another syringe.',
		shownBy: ['repeatFull', 'weighTitrantWare'],
		origin: 'Size: common practice, no source. Prior: judgement.'
	},
	{
		id: 'titrantScaleOff',
		name: 'titrant syringe or drops give another volume',
		class: 'ware',
		target: 'gain',
		scope: 'titrantWare',
		analytes: alkalinity,
		sizes: eitherWay(0.06, 0.02, 'share'),
		prior: 0.02,
		remedy: 'Weigh what it gives, and work with the volume found, or take another piece.',
		shownBy: ['weighTitrantWare', 'reference'],
		origin: 'Judgement: past the limits of the standards for such ware.'
	},
	{
		id: 'sampleScaleOff',
		name: 'sample syringe or vial holds another volume',
		class: 'ware',
		target: 'gain',
		scope: 'sampleWare',
		analytes: alkalinity,
		sizes: eitherWay(0.05, 0.018, 'share'),
		prior: 0.02,
		remedy: 'Weigh ten samples, and work with the volume found, or take another piece.',
		shownBy: ['weighSampleWare', 'reference'],
		origin: 'Judgement: past the limits of the standards for such ware.'
	},
	{
		id: 'hardFilm',
		name: 'lime or hard tap water in the vial',
		class: 'ware',
		target: 'constant',
		scope: 'sampleWare',
		analytes: alkalinity,
		// In mL of titrant for a kit of about 16 dKH in 1 mL: 0.1 to 0.5 dKH.
		sizes: about(0.019, 0.008, 'mL'),
		prior: 0.015,
		remedy: 'Wash it with vinegar, then rinse it well with purified water and with the sample.',
		shownBy: ['blank', 'largerSample'],
		origin: 'Judgement, size and prior.'
	},
	...traceInVial(
		{
			id: 'baseTrace',
			name: 'a trace of base from another test in the vial',
			// A film left by a rinse, or as much as a fraction of a drop.
			sizes: mixed('mL', [0.65, 0.055, 0.03], [0.35, 0.12, 0.03]),
			remedy: 'Keep a vial of its own for each test, and rinse it before use.',
			origin:
				'Size: 0.5 µL of 8 mol/L takes 0.12 mL of titrant of 0.034 mol/L, computed; how much is left behind, how often so much, and priors: judgement.'
		},
		{ eachTime: 0.005, once: 0.007 }
	),
	...traceInVial(
		{
			id: 'acidTrace',
			name: 'a trace of vinegar or acid in the vial',
			sizes: about(-0.06, 0.035, 'mL'),
			remedy: 'Rinse three times with purified water after washing with acid.',
			origin: 'Judgement, size and priors.'
		},
		{ eachTime: 0.003, once: 0.005 }
	)
];
