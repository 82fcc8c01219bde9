declare const ofAVial: unique symbol;

/** What is in a vial: immutable plain data. Only the titration's own kind looks inside. */
export type VialContents = { readonly [ofAVial]: 'contents' };
