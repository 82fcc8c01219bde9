import { plain } from '../../charts/numbers';
import { BlankReader } from './blank-reader';
import type { Blanks, EvidenceForm, FormContext, Told } from './form';
import { millilitresOfWater } from '$lib/metrology';

const wares = [
	{ value: 'sample', words: 'what measures the sample' },
	{ value: 'titrant', words: 'what measures the titrant' }
] as const;
const wareIds = ['sample', 'titrant'] as const;
/** Room temperature, where nobody says another: water weighs within 0.2 % of it from 10 to 28 °C. */
const ROOM_C = 22;
/** No ware is off by so much, so that a scale that is tells nothing. Our own choice. */
const UNSURE_MOST = 0.2;
const volumeRange = { low: 0.05, high: 200, why: 'A volume is between 0.05 and 200 mL' };
const massRange = { low: 0.01, high: 300, why: 'A mass is between 0.01 and 300 g' };
const scaleRange = { low: 0.0001, high: 50, why: 'A ± of a scale is between 0.0001 and 50 g' };
const warmthRange = { low: 4, high: 40, why: 'Water is weighed between 4 and 40 °C' };

function ratioOf(blanks: Blanks, context: FormContext) {
	const reader = new BlankReader(blanks, context);
	const nominalMl = reader.number('nominal', 'the volume by its mark', volumeRange);
	const massG = reader.number('mass', 'what the water weighed', massRange);
	const scaleG = reader.number('scale', 'the ± of the scale', scaleRange);
	const temperatureC = reader.optional('temperature', 'the temperature', warmthRange) ?? ROOM_C;
	if (!reader.isSound) return { reader, found: null };
	const volumeMl = millilitresOfWater(massG, temperatureC);
	const ratio = volumeMl / nominalMl;
	if (ratio < 0.3 || ratio > 3)
		reader.problems.mass = `That is ${plain(ratio, 1)} times what the mark says: one of the two numbers cannot be.`;
	if (scaleG > massG * UNSURE_MOST)
		reader.problems.scale = `The ± of the scale is more than a fifth of the water: weigh more of it at once. Found ${plain(scaleG)} of ${plain(massG)} g.`;
	return { reader, found: { ratio, volumeMl, expanded: (scaleG / massG) * ratio } };
}

/** Water weighed to find what a piece of ware really gives. */
export const weighing: EvidenceForm = {
	title: 'Weighed water',
	aside: 'Purified water, the mean of some weighings where you made several.',
	begin: () => ({ ware: 'sample' }),
	parts: () => [
		'By its mark',
		{ choice: 'ware', label: 'What was weighed', options: wares },
		'gave',
		{ blank: 'nominal', label: 'The volume by its mark, mL', after: ' mL' },
		'of water; it weighed',
		{ blank: 'mass', label: 'What the water weighed, g', after: ' g' },
		'±',
		{ blank: 'scale', label: 'The ± of the scale, g', after: ' g,' },
		'at',
		{
			blank: 'temperature',
			label: `Temperature of the water, °C; left empty it is taken as ${ROOM_C}`,
			after: ' °C.',
			taken: String(ROOM_C)
		}
	],
	remark: (blanks, context) => {
		const { reader, found } = ratioOf(blanks, context);
		if (!reader.isSound || !found) return null;
		const percent = (found.ratio - 1) * 100;
		const size = `${plain(Math.abs(percent), 1)} % ± ${plain(found.expanded * 100, 1)} %`;
		return `That is ${plain(found.volumeMl, 2)} mL, ${percent < 0 ? 'short' : 'over'} by ${size}.`;
	},
	read: (blanks, context): Told => {
		const { reader, found } = ratioOf(blanks, context);
		if (!reader.isSound || !found) return { problems: reader.problems };
		return {
			evidence: {
				kind: 'weighing',
				ware: reader.oneOf('ware', wareIds, 'sample'),
				foundOverNominal: found.ratio,
				expandedUncertainty: found.expanded
			}
		};
	}
};
