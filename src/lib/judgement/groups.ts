import type { Analysis } from './analysis';
import type { Belief } from './beliefs';
import type { FaultGroup } from './diagnosis';

export function groupsOf(_analysis: Analysis, _beliefs: readonly Belief[]): FaultGroup[] {
	return [];
}
