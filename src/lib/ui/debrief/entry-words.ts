import type { BenchAction, BenchActionType } from '$lib/bench';
import type { Kit } from '$lib/kits';
import type { WalkEvent } from '$lib/observation';
import type { InquiryEvent, RunEvent } from '$lib/procedure';
import { plain } from '../charts/numbers';
import { conclusionWords, surenessWords } from '../check/conclusion-words';

/** Words for what was done and said, in the past tense, for the replay and its table. */

type Sayers = {
	[Type in BenchActionType]: (action: Extract<BenchAction, { type: Type }>, kit: Kit) => string;
};

const waters = { sample: 'tank water', purified: 'purified water', tap: 'tap water' };
const wares = { vial: 'Vial', sampler: 'Sample syringe' };
const lamps = { white: 'White lamp', red: 'Red lamp', blue: 'Blue tank light', dim: 'Dim light' };
const sizes = { drop: 'One drop given', half: 'Half a drop given', stream: 'A short stream given' };

const reagentName = (kit: Kit, id: string) =>
	kit.reagents.find((reagent) => reagent.id === id)?.name ?? id;

const deeds: Sayers = {
	'sample.choose': ({ volumeId }, kit) =>
		`Sample size: ${kit.sample.volumes.find((each) => each.id === volumeId)?.name ?? volumeId}`,
	'ware.rinse': (action) => `${wares[action.ware]} rinsed with ${waters[action.with]}`,
	'sample.draw': ({ toMl, nose }) =>
		`Sample drawn to ${plain(toMl, 2)} mL${nose === 'inAir' ? ', nose out of the water' : ''}`,
	'sample.pour': () => 'Sample emptied into the vial',
	'sample.fillToLine': ({ levelMl }) => `Vial filled to ${plain(levelMl, 2)} mL`,
	'reagent.dose': ({ reagentId }, kit) => `A dose of ${reagentName(kit, reagentId)}`,
	'swirl.start': () => 'Swirl begun',
	'swirl.stop': () => 'Swirl ended',
	'tip.fit': ({ firm }) => `Tip put on${firm ? '' : ', loosely'}`,
	'tip.remove': () => 'Tip taken off',
	'titrant.draw': ({ sealMl, end }) =>
		`Plunger moved to ${plain(sealMl, 2)}${end === 'inAir' ? ', tip in air' : ''}`,
	'titrant.purge': ({ sealMl }) => `Tip up, pushed to ${plain(sealMl, 2)}`,
	'burette.fill': ({ levelMl }) => `Burette filled to ${plain(levelMl, 2)}`,
	'burette.runOut': ({ volumeMl }) => `${plain(volumeMl, 2)} mL run out to waste`,
	'tip.wipe': () => 'Tip wiped',
	'tip.touchOff': () => 'Drop touched off on the glass',
	'flow.start': () => 'Pressed',
	'flow.stop': () => 'Let go',
	'flow.give': ({ size }) => sizes[size],
	'dropper.tilt': ({ degrees }) => `Bottle held ${plain(degrees, 0)}° from upright`,
	'dropper.squeeze': ({ hard }) => (hard ? 'Bottle squeezed hard' : 'Bottle squeezed gently'),
	'eye.move': ({ degrees }) =>
		degrees === 0
			? 'Eye level with the mark'
			: `Eye ${plain(Math.abs(degrees), 0)}° ${degrees > 0 ? 'above' : 'below'} the mark`,
	'lamp.set': ({ lamp }) => lamps[lamp],
	'comparison.make': () => 'Comparison vial made',
	'comparison.putAway': () => 'Comparison vial put away',
	'vial.look': () => 'Looked at the vial'
};

/** With the decimals with which it was typed, one at least where it is no whole number. */
const asTyped = (value: number) => plain(value, String(value).split('.')[1]?.length ?? 0);

function saidWords(event: WalkEvent): string {
	switch (event.type) {
		case 'colour.turned':
			return 'Said: it turned';
		case 'colour.faded':
			return 'Said: it faded';
		case 'colour.stayed':
			return 'Said: it stays';
		case 'filling.done':
			return 'Said: filled';
		case 'titrant.spent':
			return 'Said: the titrant is used up';
		case 'marks.read': {
			const { sealMl, lineMl, levelMl, drops } = event.marks;
			const marks = [
				sealMl === undefined ? null : `seal ${plain(sealMl, 2)}`,
				lineMl === undefined ? null : `liquid line ${plain(lineMl, 2)}`,
				levelMl === undefined ? null : `level ${plain(levelMl, 2)}`,
				drops === undefined ? null : `${plain(drops, 0)} drops`
			].filter((mark) => mark !== null);
			return `Read: ${marks.join(', ')}`;
		}
		case 'value.reported':
			return `Reported: ${asTyped(event.value)} ${event.unit}`;
		case 'step.skipped':
			return 'Step left out';
		case 'step.done':
			return 'Step done';
		case 'wait.over':
			return 'Waited';
		case 'walk.abandoned':
			return 'Test given up';
		default:
			return 'Noted';
	}
}

const checkNames = {
	repeatFull: 'repeat',
	repeatQuick: 'quick repeat',
	secondMethod: 'second method',
	reference: 'known solution',
	largerSample: 'larger sample',
	freshLot: 'fresh bottle',
	freshSample: 'fresh sample',
	salinity: 'salinity',
	alkalinity: 'alkalinity',
	calcium: 'calcium',
	magnesium: 'magnesium'
};

function inquiryWords(event: InquiryEvent): string {
	switch (event.type) {
		case 'reading.given':
			return 'First reading given';
		case 'check.begun':
			return `Check begun: ${checkNames[event.check]}`;
		case 'check.done':
			return 'Check done';
		case 'result.asked':
			return `Check asked: ${checkNames[event.check]}`;
		case 'conclusion.given':
			return `Concluded: ${conclusionWords[event.conclusion].name}, ${surenessWords(event.sure).words.toLowerCase()}`;
		case 'drill.ended':
			return 'Drill ended';
	}
}

/** One thing that was done or said. */
export function eventWords(event: RunEvent, kit: Kit): string {
	if (event.in === 'walk') return saidWords(event.event);
	if (event.in === 'inquiry') return inquiryWords(event.event);
	const say = deeds[event.action.type] as (action: BenchAction, of: Kit) => string;
	return say(event.action, kit);
}
