import type { Kit } from '../kits';
import type { BudgetInput, BudgetLineId, BudgetReading } from './budget-input';
import {
	colourFigure,
	dropFigure,
	sampleFigure,
	scaleFigure,
	strengthFigure,
	tableFigure,
	temperatureFigure,
	type Figure
} from './budget-figures';
import { degreesOfDoubt, DOUBT, even } from './judged';

/** A line of a budget from a figure and what the value does with it. */
function inputOf(
	id: BudgetLineId,
	name: string,
	kind: BudgetInput['kind'],
	{ share, doubt, origin }: Figure,
	sensitivity: number
): BudgetInput {
	const degreesOfFreedom = degreesOfDoubt(doubt);
	return { id, name, kind, standardUncertainty: share, sensitivity, degreesOfFreedom, origin };
}

/** What ware, bottles, leaflet and habit do alike to every test. */
export function sharedInputs(kit: Kit, reading: BudgetReading): BudgetInput[] {
	const { delivery, sample } = kit;
	const size = Math.abs(reading.value);
	const perMl = reading.valuePerMl;
	const shared = (id: BudgetLineId, name: string, figure: Figure, sensitivity: number) =>
		inputOf(id, name, 'shared', figure, sensitivity);
	const sampleName = sample.measuredIn === 'syringe' ? 'sample volume' : 'filling to the line';
	return [
		shared('sampleVolume', sampleName, sampleFigure(kit, reading), size),
		shared('titrantStrength', 'titrant strength', strengthFigure(kit), size),
		delivery.by === 'dropper'
			? shared('dropSize', 'size of a drop', dropFigure(kit), size)
			: shared('deliveryScale', `${delivery.by} scale`, scaleFigure(kit, reading), perMl),
		shared('endColour', 'which colour is the end', colourFigure(kit), delivery.dropMl * perMl),
		...occasionalInputs(kit, reading, shared)
	];
}

/** Lines that not every reading has. */
function occasionalInputs(
	kit: Kit,
	reading: BudgetReading,
	shared: (id: BudgetLineId, name: string, figure: Figure, sensitivity: number) => BudgetInput
): BudgetInput[] {
	const { delivery, conversion, sample } = kit;
	const perMl = reading.valuePerMl;
	const inputs: BudgetInput[] = [];
	const endStep = reading.endStepDrops ?? 1;
	// A leaflet's mean half-drop is that of whole drops, if it reckons with one at all.
	if (endStep < 1) {
		const origin = 'the leaflet may or may not reckon with whole drops';
		const figure = { share: even((1 - endStep) / 2), doubt: DOUBT.sourced, origin };
		const name = "the leaflet's half-drop";
		inputs.push(shared('leafletHalfDrop', name, figure, delivery.dropMl * perMl));
	}
	if (reading.tipSdMl) {
		const origin = 'the count goes through the tip';
		const figure = { share: reading.tipSdMl, doubt: DOUBT.unsourced, origin };
		inputs.push(shared('tipVolume', 'volume of the tip', figure, perMl));
	}
	if (conversion.kind === 'rows') {
		const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
		const scaled = nominalMl / (reading.sampleVolumeMl ?? nominalMl);
		const name = "rounding of the leaflet's table";
		inputs.push(shared('tableRounding', name, tableFigure(conversion), scaled));
	}
	const { temperatureC } = reading;
	if (temperatureC !== undefined && temperatureC !== 20) {
		const figure = temperatureFigure(kit, temperatureC);
		inputs.push(shared('temperature', 'temperature', figure, Math.abs(reading.value)));
	}
	return inputs;
}
