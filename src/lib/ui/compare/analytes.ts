import { analyteName, analyteUnits, type Analyte } from '$lib/kits';

/** What may be measured two ways. The first is taken while nothing was chosen. */
export const analytes = Object.fromEntries(
	(Object.keys(analyteUnits) as Analyte[]).map((analyte) => [analyte, analyteName(analyte)])
) as Readonly<Record<Analyte, string>>;
