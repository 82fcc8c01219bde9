import { titrantOf, type Analyte } from '../../kits';
import type { MethodFigures } from '../../metrology';
import type { Needs } from './fault';

/** What a catalogue is asked for: the kit in question, as its leaflet describes it. */
export type MethodKind = Pick<MethodFigures, 'analyte' | 'delivery'> &
	Partial<Pick<MethodFigures, 'reagents' | 'filling' | 'isLookedUp' | 'wholeOverValue'>>;

type Limited = {
	analytes?: readonly Analyte[];
	deliveries?: readonly MethodKind['delivery'][];
	needs?: Needs;
};

function meets(needs: Needs, method: MethodKind): boolean {
	const { titrant, reagent, isFilledAgain, isLookedUp, isDifference } = needs;
	return (
		(titrant === undefined || titrantOf[method.analyte].kind === titrant) &&
		(reagent === undefined || (method.reagents?.includes(reagent) ?? false)) &&
		(isFilledAgain === undefined || isFilledAgain === (method.filling?.isAgain ?? false)) &&
		(isLookedUp === undefined || isLookedUp === (method.isLookedUp ?? true)) &&
		(isDifference === undefined || isDifference === (method.wholeOverValue !== undefined))
	);
}

/** Whether a fault, a question or a check makes sense for a method, by what the method is described to be. */
export const suits = ({ analytes, deliveries, needs }: Limited, method: MethodKind): boolean =>
	(analytes?.includes(method.analyte) ?? true) &&
	(deliveries?.includes(method.delivery) ?? true) &&
	(needs === undefined || meets(needs, method));
