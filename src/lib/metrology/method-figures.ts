import type { Analyte, Unit } from '../kits';

/**
 * A way of measuring as the measurement equation needs it, for one sample volume. All in `unit`
 * unless the name says otherwise. It can be written down by hand for a kit that is known only by its
 * leaflet.
 */
export type MethodFigures = {
	analyte: Analyte;
	unit: Unit;
	delivery: 'syringe' | 'dropper' | 'burette';
	/** Value of 1 mL of titrant at this sample volume. */
	valuePerMl: number;
	sampleVolumeMl: number;
	dropMl: number;
	/** Smallest division of the scale, mL; null for a dropper. */
	graduationMl: number | null;
	/** Tip and nozzle together, mL; null where there is none. */
	tipMl: number | null;
	/** Value at full scale; null where there is no scale. */
	fullScale: number | null;
	/** Smallest addition at the end, in drops. */
	endStepDrops: number;
	/** Ordinary spread between sound pieces, as standard deviations: shares of the value. */
	sampleWareSd: number;
	titrantWareSd: number;
	lotSd: number;
	/** Ordinary spread of where people see the end, lasting for a person, in `unit`. */
	endPointSd: number;
	/** Scatter of one test by the same hands, without the step of a drop or of the scale, in `unit`. */
	scatterSd: number;
	/** Setting the sample to its mark, anew each time, as a share of the value. */
	sampleSettingSd: number;
};
