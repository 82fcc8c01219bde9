import type { Kit } from '../../src/lib/kits';

/** A plain made-up kit of so much per mL, without offset: whatever it reports can be done by hand. */
export const plainKit = (
	sampleMl: number,
	valuePerMl: number,
	scale: 'down' | 'up' = 'down'
): Kit => ({
	format: 1,
	id: 'made-up-plain',
	name: 'Made-up plain kit',
	invented: true,
	analyte: 'alkalinity',
	unit: 'dKH',
	sample: {
		volumes: [{ id: 'only', name: 'only', volumeMl: sampleMl }],
		measuredIn: 'vialLine'
	},
	reagents: [],
	delivery: {
		by: 'syringe',
		capacityMl: 1,
		graduationMl: 0.01,
		numeralEveryMl: 0.1,
		barrelEndMl: 1.2,
		tipVolumeMl: null,
		scale,
		counts: 'used',
		dropMl: 0.02
	},
	conversion: { kind: 'perMl', valuePerMl, offset: 0 },
	endPoint: { startColour: 'teal', endColour: 'mauve', holdsSeconds: 25 },
	hazards: []
});
