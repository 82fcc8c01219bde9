import type { Analyte, Contents, Reagent } from '../../kits';
import type { CheckId } from '../../observation';

/** Where to look for the cause: what the conclusion is about. */
export const faultClasses = [
	'technique',
	'reagent',
	'ware',
	'method',
	'secondMethod',
	'reference',
	'sampling',
	'water'
] as const;
export type FaultClass = (typeof faultClasses)[number];

/**
 * What a fault does in the measurement equation y = e^γ a + s b + d + m + ε (metrology):
 * - 'gain': a share of the value (γ);
 * - 'constant': a volume of titrant in every test, which counts less in more sample (b);
 * - 'endPoint': neither proportional nor shrinking with the sample (d);
 * - 'water': what is in the vial is not the tank (a);
 * - 'reference': the known solution does not hold what it is said to hold;
 * - 'method': the second method is off (m);
 * - 'scatter': tests fall wider apart than usual (ε);
 * - 'arithmetic': the mark is made into a value in the wrong way.
 */
export type FaultTarget =
	'gain' | 'constant' | 'endPoint' | 'water' | 'reference' | 'method' | 'scatter' | 'arithmetic';

/** Which readings share the fault: those that have the same of this as the test in question. */
export type FaultScope =
	| 'oneTest'
	| 'hands'
	| 'sampleWare'
	| 'titrantWare'
	| 'lot'
	| 'kit'
	| 'sampling'
	| 'solution'
	| 'instrument'
	/** The value that was taken off to find this one. */
	| 'takenOff'
	| 'tank';

/** One way in which a fault may come out: a normal distribution with a weight. Weights sum to 1. */
export type FaultSize = {
	weight: number;
	mean: number;
	sd: number;
	/**
	 * 'share' of the value (−0.08: reads 8 % low; of all that is titrated, where another value is taken
	 * off); 'mL' of titrant; 'drops' of this kit; 'tips', the volume of tip and nozzle of this kit;
	 * 'tipsEach' at every filling and 'tipsAgain' at every one but the first, where it is filled again;
	 * 'fillings' of such a kit; 'divisions' of its scale; 'dKH' (or the customary unit of
	 * the fault's analyte); 'timesScatter', a factor on the usual scatter; 'fullScaleLess', the value
	 * reads as full scale less itself (used and left taken for each other), and mean and sd, in the
	 * customary unit, come on top; 'otherWater', what is in the vial is of another water than the tank's, and
	 * holds such a share of what tanks usually hold.
	 */
	of:
		| 'share'
		| 'mL'
		| 'drops'
		| 'tips'
		| 'tipsEach'
		| 'tipsAgain'
		| 'fillings'
		| 'divisions'
		| 'customaryUnit'
		| 'timesScatter'
		| 'fullScaleLess'
		| 'otherWater';
};

/** What a second method can be. */
export type SecondMethod = 'kit' | 'photometer' | 'laboratory' | 'probe';

/** What a method must be like, by its description, for something to make sense. All of it, where several are named. */
export type Needs = {
	/** What is in the titrant. */
	titrant?: Contents['titrant']['kind'];
	/** A reagent that the leaflet adds. */
	reagent?: Reagent['role'];
	/** It is filled again before the end, or is not. */
	isFilledAgain?: boolean;
	/** Its value hangs on a row of a table or on one of several sample sizes, or does not. */
	isLookedUp?: boolean;
	/** Another value is taken off what was titrated, or is not. */
	isDifference?: boolean;
};

/** A cause of a wrong reading, as data. */
export type Fault = {
	id: string;
	/** For lists: what is wrong, without blame: 'titrant grown stronger'. */
	name: string;
	class: FaultClass;
	target: FaultTarget;
	scope: FaultScope;
	/** Analytes whose test can have it. */
	analytes: readonly Analyte[];
	/** Ways of delivering titrant in which it can occur; all when left out. */
	deliveries?: readonly ('syringe' | 'dropper' | 'burette')[];
	/** What else the method must be like. */
	needs?: Needs;
	/** Second methods that can have it, for those of a second method; all when left out. */
	methods?: readonly SecondMethod[];
	/** Checks that are done in another way, so that it cannot be in them. */
	undoneBy?: readonly CheckId[];
	/** Its shares are of the number as it was written down, and not of all that was titrated. */
	isOfTheNumber?: boolean;
	sizes: readonly FaultSize[];
	/** Probability that a test in doubt has it, before anything is known. */
	prior: number;
	remedy: string;
	/** The checks that show it best, for the words of the screen. */
	shownBy: readonly CheckId[];
	/** Where sizes and prior come from. */
	origin: string;
};

/** A question to the person, in plain words, with its answers in order. */
export type Cue = {
	id: string;
	question: string;
	/** Why it is asked, one sentence. */
	because: string;
	answers: readonly { id: string; words: string }[];
	/**
	 * Probability of each answer, by fault, given that fault; `otherwise` for every fault not named
	 * and for none. Each within 0.02 to 0.98; each row sums to 1.
	 */
	likelihoods: {
		otherwise: Record<string, number>;
		byFault: Record<string, Record<string, number>>;
	};
	/** Analytes and deliveries in which it makes sense; all when left out. */
	analytes?: readonly Analyte[];
	deliveries?: readonly ('syringe' | 'dropper' | 'burette')[];
	/** What else the method must be like. */
	needs?: Needs;
	/** Asked only where such a second method is among the evidence. */
	methods?: readonly SecondMethod[];
	/** What it is about: asked only where there is one. The test in question when left out. */
	about?: 'secondMethod' | 'reference';
	/** Seconds it takes to answer. */
	seconds: number;
	origin: string;
};
