import { expect, test } from 'vitest';
import type { CheckHeader } from '$lib/records';
import { homeCheck } from '../../src/routes/home-readings';

const header = (summary: CheckHeader['summary']): CheckHeader => ({
	id: 'c',
	analyte: 'alkalinity',
	kitId: null,
	startedAtEpochMs: 0,
	changedAtEpochMs: 0,
	where: '2 things known',
	state: 'unfinished',
	summary
});
const six = { value: 6, unit: 'dKH', expandedUncertainty: 0.5 } as const;

test('the first page says of the ± of an unfinished check whether anybody gave it', () => {
	const value = (summary: CheckHeader['summary']) => homeCheck(header(summary), () => 'dKH').value;
	expect(value(six)).toBe('6.0 ± 0.5 dKH');
	expect(value({ ...six, isUncertaintyTaken: true })).toBe('6.0 ± 0.5 dKH (± taken as usual)');
	expect(value(null)).toBeNull();
});
