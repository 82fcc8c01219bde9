/** The kits room: what a leaflet says, as data, and what follows from it. */
export * from './house-kits';
export * from './kit';
export * from './step';
export * from './steps';
export * from './typed-number';
export * from './value';
