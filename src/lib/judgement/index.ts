/** The judgement room: faults, what evidence says of them, what to check next, what to do. */
export * from './advice-loss';
export { cues, cuesFor, faultById, faults, faultsFor, type MethodKind } from './catalogue';
export { checkCosts } from './checks';
export * from './correction';
export { bandOf, correctionInputOf } from './correction-input';
export { phChangeAtOnce, type PhInput } from './correction-ph';
export { correctionPlan } from './correction-plan';
export { amountInWords } from './correction-sum';
export { decide } from './decide';
export { livestockRatios } from './decide-belief';
export { bandInWords, chanceInWords, inDaysInWords, measured, setValue } from './decide-words';
export * from './decision';
export { diagnose, withCumulative } from './diagnose';
export { diagnoseAndRank } from './diagnose-and-rank';
export * from './diagnosis';
export { emergencyPath, type EmergencyPath } from './emergency';
export * from './end-point-effects';
export { factsOf, type Facts, type MatrixEffect } from './facts';
export * from './fault';
export * from './limits';
export * from './matrix-effect';
export { rankChecks } from './rank';
export * from './ranked-check';
export { retestInterval } from './retest';
export * from './recipe';
export {
	additionAsMade,
	smallestShareShown,
	standardAddition,
	type Addition,
	type AdditionInput,
	type AdditionMade
} from './recipe-addition';
export { contentOf, gPerMlAfter, recipeAsMade, volumeMlAfter } from './recipe-content';
export * from './recipe-evidence';
export {
	measuredIn,
	mlPerWeighedG,
	scaleOf,
	weighingUncertaintyG,
	type Measure,
	type Scale
} from './recipe-measure';
export * from './recipe-reading';
export * from './recipe-routes';
export {
	contentOfGramPerL,
	gramsPerL,
	mistakenFor,
	substanceOf,
	substances,
	type Purity,
	type Substance,
	type SubstanceId
} from './recipe-substance';
export * from './recipe-traps';
export {
	SALT_G_PER_L,
	unmeasuredWater,
	waterByBlank,
	type RecipeMatrix,
	type WaterHolds
} from './recipe-water';
export * from './slip-cues';
export * from './support';
export * from './water-causes';
