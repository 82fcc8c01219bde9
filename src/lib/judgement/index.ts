/** The judgement room: what slips look like, and what evidence carries. */
export * from './slip-cues';
export * from './support';
