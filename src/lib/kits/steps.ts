import type { Kit } from './kit';
import type { Step } from './step';

/** Numeral of a syringe's scale at a distance from its nozzle end, and back: the same sum both ways. */
export function numeralAt(
	delivery: { capacityMl: number; scale: 'down' | 'up' },
	fromNozzleMl: number
): number {
	return delivery.scale === 'down' ? fromNozzleMl : delivery.capacityMl - fromNozzleMl;
}

/**
 * The leaflet of a kit as steps in their order. Nothing here knows one kit from another: what a kit
 * does not ask for gives no step.
 */
export function stepsOf(kit: Kit): Step[] {
	const steps: Step[] = [];
	if (kit.sample.volumes.length > 1)
		steps.push({
			id: 'choose',
			kind: 'choose',
			volumeIds: kit.sample.volumes.map((volume) => volume.id)
		});
	if (kit.sample.measuredIn === 'syringe')
		steps.push({ id: 'rinse-sampler', kind: 'rinse', ware: 'sampler' });
	steps.push({ id: 'rinse-vial', kind: 'rinse', ware: 'vial' });
	steps.push({ id: 'measure', kind: 'measure', measuredIn: kit.sample.measuredIn });
	for (const reagent of kit.reagents) {
		steps.push({
			id: `dose-${reagent.id}`,
			kind: 'dose',
			reagentId: reagent.id,
			amount: reagent.dose.amount,
			unit: reagent.dose.unit
		});
		const { id: reagentId, mixSeconds, waitSeconds } = reagent;
		if (mixSeconds > 0)
			steps.push({ id: `mix-${reagentId}`, kind: 'mix', seconds: mixSeconds, reagentId });
		if (waitSeconds > 0)
			steps.push({ id: `wait-${reagentId}`, kind: 'wait', seconds: waitSeconds, reagentId });
	}
	const { delivery } = kit;
	if (delivery.by === 'syringe')
		steps.push({
			id: 'fill',
			kind: 'fill',
			by: 'syringe',
			toMl: numeralAt(delivery, delivery.capacityMl)
		});
	if (delivery.by === 'burette') steps.push({ id: 'fill', kind: 'fill', by: 'burette', toMl: 0 });
	steps.push({
		id: 'titrate',
		kind: 'titrate',
		by: delivery.by,
		holdsSeconds: kit.endPoint.holdsSeconds
	});
	steps.push({
		id: 'read',
		kind: 'read',
		what: delivery.by === 'dropper' ? 'drops' : delivery.by === 'burette' ? 'level' : 'mark'
	});
	return steps;
}
