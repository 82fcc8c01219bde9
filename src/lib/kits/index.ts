/** The kits room: what a leaflet says, as data, and what follows from it. */
export * from './house-kits';
export { draftOfKit } from './draft-of-kit';
export { suggestionsFor, type Suggestion } from './draft-suggestions';
export * from './kit';
export * from './kit-draft';
export { kitOfDraft, type DraftedKit } from './kit-of-draft';
export * from './kit-versions';
export { checkLeaflet, type LeafletCheck } from './leaflet-check';
export * from './leaflet-figures';
export type { LeafletRemark } from './leaflet-remark';
export { loadAs, loadKit } from './load';
export { reachMl, scaleEndsOf } from './scale-ends';
export * from './step';
export * from './steps';
export * from './typed-number';
export * from './unit-traps';
export * from './units';
export * from './value';
