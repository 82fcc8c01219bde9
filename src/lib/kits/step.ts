/**
 * One thing the leaflet asks for. `kind` names the state of the walk that it needs; everything
 * particular to a kit is data here, so that a new kit needs no new state.
 */
export type Step =
	| { id: string; kind: 'choose'; volumeIds: string[] }
	| { id: string; kind: 'rinse'; ware: 'vial' | 'sampler' }
	| { id: string; kind: 'measure'; measuredIn: 'syringe' | 'vialLine' }
	| { id: string; kind: 'dose'; reagentId: string; amount: number; unit: 'drop' | 'mL' | 'spoon' }
	/** After a reagent went in: which one tells what may be seen meanwhile. */
	| { id: string; kind: 'mix'; seconds: number; reagentId?: string }
	| { id: string; kind: 'wait'; seconds: number; reagentId?: string }
	/** Fill the syringe or burette to `toMl`, a numeral of its scale. */
	| { id: string; kind: 'fill'; by: 'syringe' | 'burette'; toMl: number }
	| { id: string; kind: 'titrate'; by: 'syringe' | 'dropper' | 'burette'; holdsSeconds: number }
	| { id: string; kind: 'read'; what: 'mark' | 'drops' | 'level' };
export type StepKind = Step['kind'];
