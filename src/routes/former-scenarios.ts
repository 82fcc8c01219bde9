/** Scenarios that had another id once: what is kept, shared or bookmarked under it is still theirs. */
const former: Readonly<Record<string, string>> = {
	'the-worked-example': 'late-september'
};

export const formerScenarioIds: readonly string[] = Object.keys(former);

/** The id that a scenario has now, from any that it ever had. */
export const scenarioIdNow = (id: string): string => former[id] ?? id;
