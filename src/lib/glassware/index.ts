/** The glassware room: volumes, drops, mixing and the eye, without any chemistry. */
export * from './burette';
export * from './drops';
export * from './dropper';
export * from './eye';
export * from './syringe';
export * from './vial';
