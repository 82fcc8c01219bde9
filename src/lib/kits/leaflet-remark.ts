/** Something that follows from what a leaflet says, for the margin beside it. */
export type LeafletRemark = {
	id:
		| 'line'
		| 'rowOff'
		| 'bends'
		| 'twice'
		| 'falling'
		| 'outOfOrder'
		| 'tableEnds'
		| 'startValue'
		| 'strength'
		| 'reach'
		| 'dropsDecide'
		| 'accuracy';
	/** The part of the leaflet beside which it belongs. */
	about: 'conversion' | 'delivery' | 'accuracy';
	/** 'warn' where a blank is likely wrong, or a person would be misled. */
	tone: 'say' | 'warn';
	text: string;
	/** Rows that it is about, numbered from 1 as they stand in the table. */
	rows?: number[];
};
