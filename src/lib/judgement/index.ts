/** The judgement room: faults, what evidence says of them, what to check next, what to do. */
export * from './decision/advice-loss';
export {
	cues,
	cuesFor,
	faultById,
	faults,
	faultsFor,
	type MethodKind
} from './catalogue/catalogue';
export * from './consistency/consistency';
export { lookTogether } from './consistency/look-together';
export { checkCosts } from './ranking/checks';
export * from './correction/correction';
export { bandOf, correctionInputOf } from './correction/correction-input';
export { phChangeAtOnce, type PhInput } from './correction/correction-ph';
export { meansFor } from './correction/correction-means';
export { hydratesOf } from './correction/correction-powders';
export { correctionPlan } from './correction/correction-plan';
export { amountInWords } from './correction/correction-sum';
export { decide } from './decision/decide';
export { silentWords } from './decision/decide-because';
export { livestockRatios } from './decision/decide-belief';
export {
	bandInWords,
	chanceInWords,
	inDaysInWords,
	measured,
	setValue
} from './decision/decide-words';
export * from './decision/decision';
export { diagnose, withCumulative } from './diagnosis/diagnose';
export { diagnoseAndRank } from './ranking/diagnose-and-rank';
export * from './diagnosis/diagnosis';
export { emergencyPath, type EmergencyPath } from './decision/emergency';
export * from './catalogue/end-point-effects';
export { changeReach, factsOf, type Facts, type MatrixEffect } from './practice/facts';
export * from './catalogue/fault';
export * from './decision/limits';
export { isPossibleSalinity, possibleSalinity, salinityOf, salinityOff } from './decision/salinity';
export * from './catalogue/matrix-effect';
export { rankChecks } from './ranking/rank';
export * from './ranking/ranked-check';
export { retestInterval } from './decision/retest';
export * from './recipe/recipe';
export {
	additionAsMade,
	smallestShareShown,
	standardAddition,
	type Addition,
	type AdditionInput,
	type AdditionMade
} from './recipe/recipe-addition';
export { contentOf, gPerMlAfter, recipeAsMade, volumeMlAfter } from './recipe/recipe-content';
export * from './recipe/recipe-evidence';
export {
	measuredIn,
	mlPerWeighedG,
	scaleOf,
	weighingUncertaintyG,
	type Measure,
	type Scale
} from './recipe/recipe-measure';
export * from './recipe/recipe-reading';
export * from './recipe/recipe-routes';
export {
	contentOfGramPerL,
	gramsPerL,
	mistakenFor,
	substanceOf,
	substances,
	substancesFor,
	type MadeAnalyte,
	type Purity,
	type Substance,
	type SubstanceId
} from './recipe/recipe-substance';
export * from './recipe/recipe-traps';
export {
	SALT_G_PER_L,
	unmeasuredWater,
	waterByBlank,
	type RecipeMatrix,
	type WaterHolds
} from './recipe/recipe-water';
export * from './practice/slip-cues';
export * from './practice/support';
export * from './catalogue/water-causes';
export { waterCausesTold, type WaterTold } from './catalogue/water-causes-told';
