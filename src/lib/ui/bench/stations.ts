import type { Kit, Step, StepKind } from '$lib/kits';
import type { BenchView } from './layout';

/** The way through a test as it is shown on the rail. */
export const stationNames: Record<BenchView, string> = {
	sample: 'sample',
	dose: 'reagents',
	fill: 'fill',
	drop: 'drop',
	read: 'read'
};

const views: Record<StepKind, BenchView> = {
	choose: 'sample',
	rinse: 'sample',
	measure: 'sample',
	dose: 'dose',
	mix: 'dose',
	wait: 'dose',
	fill: 'fill',
	titrate: 'drop',
	read: 'read'
};

/** What is on the stage during a step; a refill takes the drops back to the bottle for a moment. */
export function viewOf(kind: StepKind, isRefilling: boolean): BenchView {
	return kind === 'titrate' && isRefilling ? 'fill' : views[kind];
}

/** Where a step lies on the rail. */
export const stationOf = (kind: StepKind): BenchView => views[kind];

/** Stations of these steps, each once and in order. */
export function stationsOf(steps: readonly Step[]): BenchView[] {
	return [...new Set(steps.map((step) => views[step.kind]))];
}

const roleTitles: Record<Kit['reagents'][number]['role'], string> = {
	indicator: 'Indicator',
	base: 'Base',
	buffer: 'Buffer'
};

/** The name of the page during a step with this kit. */
export function stepTitle(step: Step, { reagents }: Pick<Kit, 'reagents'>): string {
	switch (step.kind) {
		case 'choose':
			return 'Sample size';
		case 'rinse':
			return step.ware === 'vial' ? 'Rinse the vial' : 'Rinse the syringe';
		case 'measure':
			return 'Measure';
		case 'dose':
			return roleTitles[reagents.find(({ id }) => id === step.reagentId)?.role ?? 'indicator'];
		case 'mix':
			return 'Mix';
		case 'wait':
			return 'Wait';
		case 'fill':
			return 'Fill';
		case 'titrate':
			return 'Titrate';
		case 'read':
			return 'Read';
	}
}
