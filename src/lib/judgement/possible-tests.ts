import type { Evidence } from '../observation';
import type { Row, RowContext } from './row';

export function possibleTests(_rows: readonly Row[], _context: RowContext): readonly Evidence[] {
	return [];
}
