import { sampleVolumeOf } from './counted-mark';
import { useOfFilling, type UseOfFilling } from './expected-use';
import { refillsIn, startFillingOf } from './refills';
import type { Remark, Remarker } from './tank-remark';
import { costOf, otherVolumes } from './tank-sight';
import { USUAL_TIP_ML } from './titration-value';

/** Fillings that an expected use comes to, whole ones. */
function fillingsIn({ expectedMl, capacityMl }: UseOfFilling): number {
	return Math.max(2, Math.ceil(expectedMl / capacityMl));
}

/** Titrant enough for what is expected: said while it can still be filled up. */
const enoughRemarks: Remarker = (sight) => {
	const { kit, events, expected, step } = sight;
	if (expected === null || !step || kit.delivery.by === 'dropper') return [];
	if (!['choose', 'rinse', 'measure', 'fill'].includes(step.kind)) return [];
	const sampleVolumeMl = sampleVolumeOf(kit, events);
	const start = startFillingOf(events)?.event;
	const stood = start?.sealMl ?? start?.levelMl;
	const use = useOfFilling(kit, expected, sampleVolumeMl, stood);
	if (!use || use.isEnough) return [];
	const { smallerMl } = otherVolumes(kit, sampleVolumeMl);
	const isMeasured = sight.isPast('measure');
	if (!use.isFullEnough && smallerMl !== null && !isMeasured)
		return [
			{
				id: 'fill.tooLittle',
				tone: 'say',
				text: `By the last test one filling may not do. ${smallerMl} mL of water needs less.`,
				offers: ['useSmallerSample']
			}
		];
	if (step.kind !== 'fill') return [];
	return [
		use.isFullEnough
			? {
					id: 'fill.tooLittle',
					tone: 'say',
					text: 'By the last test this may not be enough. Fill it up before the first drop.',
					offers: ['refillToSeal']
				}
			: {
					id: 'fill.tooLittle',
					tone: 'say',
					text: `By the last test it takes about ${fillingsIn(use)} fillings. Note the same mark before and after each.`
				}
	];
};

/** Refills on the way: the same mark before and after. */
const refillRemarks: Remarker = (sight) => {
	const { kit, events, step } = sight;
	if (step?.kind !== 'titrate' && step?.kind !== 'read') return [];
	return refillsIn(kit, events).flatMap(({ refilledMl, isMixed, isBackwards }, i): Remark[] => {
		const id = `refill:${i}`;
		const tipMl = (kit.delivery.by === 'syringe' && kit.delivery.tipVolumeMl) || USUAL_TIP_ML;
		if (isMixed)
			return [
				{
					id,
					tone: 'warn',
					text: 'The refill has the seal once and the line once. Give the same mark both times.',
					...costOf(sight, tipMl)
				}
			];
		if (isBackwards)
			return [
				{
					id,
					tone: 'warn',
					text: 'By its marks the refill left it emptier. Are the two the wrong way round?'
				}
			];
		return refilledMl === null
			? [
					{
						id,
						tone: 'warn',
						text: 'Where did it stand before the refill, and where after? Without both, no value.'
					}
				]
			: [];
	});
};

/** Whether there is titrant enough, and how much a refill brought. */
export const titrantRemarks: Remarker = (sight) => [
	...refillRemarks(sight),
	...enoughRemarks(sight)
];
