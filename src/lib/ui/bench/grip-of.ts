import type { ComponentProps } from 'svelte';
import type { Kit, Step } from '$lib/kits';
import type { BenchHands } from './bench-hands.svelte';
import type Grip from './Grip.svelte';
import { turnedX, type BenchView, type StageLayout } from './layout';
import { samplerPxPerMl } from './drawing/syringe-shape';
import { depthOf, FULL_OVER_SAMPLE } from './drawing/vial-shape';

type Glass = ComponentProps<typeof Grip>['glass'];

/** What can be taken hold of on the stage during a step; null when there is nothing to drag. */
export function gripOf(at: {
	step: Step;
	view: BenchView;
	hands: BenchHands;
	kit: Kit;
	layout: StageLayout;
	sampleVolumeMl: number;
	width: number;
	isMirrored: boolean;
}): Glass | null {
	const { step, view, hands, kit, layout, sampleVolumeMl } = at;
	const side = (x: number) => (at.isMirrored ? at.width - x : x);
	if (step.kind === 'measure' && step.measuredIn === 'syringe') {
		const highMl = Math.ceil(sampleVolumeMl * 1.25);
		return {
			label: 'Plunger of the sample syringe: drag it, or use the arrow keys',
			x: side(layout.sampler.x),
			width: 96,
			pxPerMl: samplerPxPerMl(layout.sampler.height, highMl),
			outward: 1,
			lowMl: 0,
			highMl,
			keyFactor: 10,
			position: () => hands.samplerMl,
			show: (ml) => hands.show(hands.samplerDeed(ml)),
			keep: (ml) => hands.letGo(hands.samplerDeed(ml))
		};
	}
	if (step.kind === 'measure') {
		const size = { ...layout.vial, fullMl: sampleVolumeMl * FULL_OVER_SAMPLE };
		return {
			label: 'Water in the vial: drag it up to pour, or use the arrow keys',
			x: side(layout.vial.x),
			width: layout.vial.width,
			pxPerMl: depthOf(size, 1),
			outward: 1,
			lowMl: 0,
			highMl: sampleVolumeMl * 1.3,
			keyFactor: 10,
			position: () => hands.levelMl ?? 0,
			show: (ml) => hands.showLevel(ml),
			keep: (ml) => hands.showLevel(ml)
		};
	}
	if (view !== 'fill') return null;
	if (kit.delivery.by === 'burette')
		return {
			label: 'Level in the burette: drag it up to pour in, or use the arrow keys',
			x: side(layout.delivery.x),
			width: 72,
			pxPerMl: layout.delivery.pxPerMl,
			outward: 1,
			lowMl: -kit.delivery.capacityMl,
			highMl: 0.5,
			keyFactor: 5,
			position: () => -hands.buretteMl,
			show: (ml) => hands.show({ type: 'burette.fill', levelMl: -ml }),
			keep: (ml) => hands.letGo({ type: 'burette.fill', levelMl: -ml })
		};
	if (kit.delivery.by !== 'syringe') return null;
	return {
		label: 'Plunger: drag it, or use the arrow keys',
		x: side(hands.hold === 'tipUp' ? turnedX(layout) : layout.delivery.x),
		width: 96,
		pxPerMl: layout.delivery.pxPerMl,
		outward: hands.hold === 'tipUp' ? -1 : 1,
		lowMl: 0,
		highMl: kit.delivery.barrelEndMl,
		keyFactor: 1,
		position: () => hands.sealMl,
		show: (ml) => hands.show(hands.sealDeed(ml)),
		keep: (ml) => hands.letGo(hands.sealDeed(ml))
	};
}
