/** The chemistry room: seawater, acid titration, indicators and colour. pH is on the total scale. */
export * from './acid-titration';
export { acidVial } from './acid-vial';
export { aragoniteSaturation, aragoniteSolubility } from './aragonite';
export * from './chelation-additions';
export { blueShareOf, chelationColourOf } from './chelation-colour';
export {
	chelationConstants,
	metalsOfSeawater,
	type ChelationConstants
} from './chelation-constants';
export { chelationEndVolumeMl } from './chelation-end';
export { edtaSlope, type EdtaSlope } from './chelation-slope';
export { settlePrecipitate } from './chelation-settle';
export { chelationStateOf, type ChelationState, type DyeState } from './chelation-state';
export {
	preparedVessel,
	titrateWithEdta,
	type EdtaPoint,
	type EdtaTitration
} from './chelation-titration';
export * from './chelation-vessel';
export { chelationVial } from './chelation-vial';
export {
	colourOfDyes,
	labFromXyz,
	rgbFromXyz,
	xyzFromRgb,
	xyzOfSpectrum,
	spectrumOfBands,
	type Lab,
	type Rgb,
	type Xyz
} from './colour';
export { colourDifference } from './colour-difference';
export type { Constants } from './constants';
export { densityKgPerL, salinityOfSpecificGravity } from './density';
export { dyeIds, dyeOf, type Dye } from './dyes';
export { acidToEndMl, placeOnTheWay, VIAL_PATH_CM, type DyeShifts, type End } from './end-hue';
export {
	conditionalLogK,
	edtaAlpha,
	edtaOfHarris,
	edtaOfHarvey,
	type EdtaConstants
} from './edta-constants';
export * from './fit-options';
export { fitAlkalinityTitration } from './fit-titration';
export * from './gran';
export { hydroxideEquilibrium } from './hydroxide-equilibrium';
export { lampSpectra, type LampSpectrum } from './lamps';
export { mediumOf, type Matrix, type Medium } from './matrix';
export { conditionalDyeLogK, metalDyeIds, metalDyeOf, type MetalDye } from './metal-dyes';
export {
	hydroxideOnsetPh,
	magnesiumHydroxide,
	saturatedMagnesiumMolPerL,
	type PrecipitationConstants
} from './precipitation';
export * from './probe-alkalinity';
export { probeFlagIds, type KnownAlkalinity, type ProbeFlag, type ProbeFlagId } from './probe-flag';
export type { ProbePoint, ProbeTitration } from './probe-titration';
export * from './reference-reading';
export { requireWithin } from './require-within';
export {
	alkalinityAt,
	dicAtAlkalinityAndPh,
	dyeShares,
	phAtAlkalinity,
	type Composition
} from './speciation';
export * from './seawater';
export type { Totals } from './totals';
export * from './units';
export * from './vessel';
export { colourOf, type SeenColour } from './vessel-colour';
export type * from './vial-contents';
