export * from './action';
export * from './scenario';
export * from './seen';
export * from './world';
export { advance } from './advance';
export { observe, shownColour, VIAL_PATH_CM } from './observe';
export { normalAt, uniformAt } from './noise';
export { reduce } from './reduce';
export { chosenVolumeMl, createBench, SEAL_RIM_ML, titrantMolPerL, type BenchState } from './state';
