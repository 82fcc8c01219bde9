import { error } from '@sveltejs/kit';
import { formerScenarioIds, scenarioIdNow } from '../../former-scenarios';
import { drillItems, practiceItems } from '../../practice-list.server';

export const entries = () => [
	...practiceItems().map(({ id }) => ({ id })),
	...formerScenarioIds.map((id) => ({ id }))
];

/** The name of the run and of the drills that a debrief may lead to; never what lies behind it. */
export const load = ({ params }) => {
	const item = practiceItems().find(({ id }) => id === scenarioIdNow(params.id));
	if (!item) error(404, 'There is no such practice.');
	return { item, drills: drillItems() };
};
