import { describe, expect, it, test } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit, type Kit } from '$lib/kits';
import type { Marks, WalkEvent } from '$lib/observation';
import { stepOf, testResult, type Remark } from '$lib/procedure';
import { baseKit, upKit } from './tank-kits';
import { Played } from './tank-played';

/** A clean test: what hands note of it, and what it comes to by hand. */
type Clean = {
	kit: Kit;
	filled: Marks;
	drops: number;
	read: Marks;
	/** In dKH, by the sum beside it. */
	value: number;
};

const clean: [string, Clean][] = [
	[
		'house syringe',
		{
			kit: houseSyringeKit,
			filled: { sealMl: 1 },
			// 25 drops of 0.021 mL are 0.525; 0.52 · 16 − 0.30.
			drops: 25,
			read: { sealMl: 0.48, drops: 25 },
			value: 8.02
		}
	],
	[
		'house syringe, seal and line noted at both ends',
		{
			kit: houseSyringeKit,
			filled: { sealMl: 1, lineMl: 0.83 },
			drops: 25,
			read: { sealMl: 0.48, lineMl: 0.31 },
			value: 8.02
		}
	],
	// 13 · 0.6 − 0.45.
	[
		'house dropper',
		{ kit: houseDropperKit, filled: {}, drops: 13, read: { drops: 13 }, value: 7.35 }
	],
	// 88 drops of 0.04 mL are 3.52; 3.5 · 2.3 − 0.19.
	[
		'house burette',
		{
			kit: houseBuretteKit,
			filled: { levelMl: 0 },
			drops: 88,
			read: { levelMl: 3.5, drops: 88 },
			value: 7.86
		}
	],
	[
		'base, and a wait (made up)',
		{ kit: baseKit, filled: { sealMl: 1 }, drops: 25, read: { sealMl: 0.48 }, value: 8.02 }
	],
	[
		'0 at the full mark (made up)',
		{ kit: upKit, filled: { sealMl: 0 }, drops: 25, read: { sealMl: 0.52 }, value: 8.02 }
	]
];

/** Plays it in good time, and gathers what was said after every entry. */
function heardOn(played: Played, { filled, drops, read }: Clean, isNoted: boolean): Remark[] {
	const heard: Remark[] = [];
	const listen = () => heard.push(...played.remarks(8));
	const say = (event: WalkEvent, secondsLater = 4) => {
		played.say(event, secondsLater);
		listen();
	};
	const { kit } = played;
	for (let step = stepOf(played.titration.walk.context); step;) {
		if (step.kind === 'dose' && isNoted)
			say({ type: 'reagent.added', reagentId: step.reagentId, amount: step.amount });
		if (step.kind === 'fill' && isNoted) {
			if (kit.delivery.by === 'syringe') say({ type: 'tip.fitted', firm: true });
			say({ type: 'titrant.drawn', ...filled });
		}
		if (step.kind === 'titrate') {
			if (isNoted) for (let i = 0; i < drops; i++) say({ type: 'titrant.fell', drops: 1 }, 4);
			else played.wait(150);
			say({ type: 'colour.turned' });
			say({ type: 'colour.stayed' });
			played.wait(kit.endPoint.holdsSeconds);
			listen();
		}
		if (step.kind === 'read') say({ type: 'marks.read', marks: read }, 15);
		played.done('seconds' in step ? step.seconds : 3);
		listen();
		step = stepOf(played.titration.walk.context);
	}
	return heard;
}

const warned = (heard: readonly Remark[]) =>
	heard.filter(({ tone }) => tone === 'warn').map(({ id }) => id);

describe.each(clean)('clean hands with %s', (_name, test) => {
	const circumstances = { water: 'tank', light: 'white', hoursSinceDose: 3 } as const;

	it('hear no warning at any entry of it, nor of its repeat, and get the value of their marks', () => {
		const played = new Played(test.kit, circumstances);
		const heard = heardOn(played, test, true);
		expect(warned(heard)).toEqual([]);
		// They are spoken to, though: of what stays and what comes after it.
		expect(heard.map(({ id }) => id)).toEqual(
			expect.arrayContaining(['titrate.flash', 'titrate.hold', 'titrate.after'])
		);
		expect(testResult(played.state)?.value).toBeCloseTo(test.value, 2);
		played.add({
			in: 'test',
			event: { type: 'titration.begun', titration: 1, purpose: 'repeat' }
		});
		expect(warned(heardOn(played, test, true))).toEqual([]);
		const result = testResult(played.state);
		expect(result?.value).toBeCloseTo(test.value, 2);
		expect(result?.isSuspect).toBe(false);
	});

	it('hear none where they note the end and nothing else, and the value is the same', () => {
		const played = new Played(test.kit);
		// Seal and line are both where the kit's own tip has them, so that either tells the start.
		expect(warned(heardOn(played, test, false))).toEqual([]);
		expect(testResult(played.state)?.value).toBeCloseTo(test.value, 2);
	});
});

test('what did not go in is asked for until the first drop, by the leaflet’s own words', () => {
	const one: Kit = {
		...houseSyringeKit,
		reagents: houseSyringeKit.reagents.map((each) => ({
			...each,
			dose: { amount: 1, unit: 'drop' as const }
		}))
	};
	const played = new Played(one).to('dose').skip().to('titrate');
	expect(played.remark('dose:indicator')).toMatchObject({
		tone: 'warn',
		text: 'No indicator went in; the leaflet asks for 1 drop. Add it before the first drop.'
	});
	played.drops(1);
	expect(played.remark('dose:indicator')).toBeUndefined();
	const turned = new Played(one).to('dose').skip().to('titrate').say({ type: 'colour.turned' });
	expect(turned.remark('dose:indicator')).toBeUndefined();
});

test('of a long while without a drop noted nobody claims that carbon dioxide left', () => {
	const uncounted = new Played(houseSyringeKit).to('titrate').wait(8 * 60);
	expect(uncounted.remark('titrate.pause')).toMatchObject({ tone: 'say' });
	expect(uncounted.remark('titrate.pause')?.text).not.toMatch(/carbon/i);
	const counted = new Played(houseSyringeKit)
		.to('titrate')
		.drops(5)
		.wait(8 * 60);
	expect(counted.remark('titrate.pause')).toMatchObject({ tone: 'warn' });
	expect(counted.remark('titrate.pause')?.text).toMatch(/^8 min since the last drop\. Carbon/);
});

test('the line alone, from a start that nobody noted, tells nothing of the scale’s other end', () => {
	// Line at 0.35 from 0.83: 0.48 mL, 7.38 dKH. By its other end, 0.65: 0.18 mL, 2.58 dKH; counted
	// from the full mark, where the line never stood, that would pass for 5.30.
	const played = new Played(houseSyringeKit).to('titrate').say({ type: 'colour.stayed' }).done(30);
	played.say({ type: 'marks.read', marks: { lineMl: 0.35 } });
	expect(played.ids(5.3)).not.toContain('read.otherEnd');
	expect(played.ids(2.6)).not.toContain('read.wrongSide');
	expect(testResult(played.done().state)?.value).toBeCloseTo(7.38, 2);
});

describe('seal and line the wrong way round', () => {
	it.each([
		['down', houseSyringeKit, { sealMl: 0.9, lineMl: 1 }, { sealMl: 0.83, lineMl: 1 }],
		['up', upKit, { sealMl: 0.1, lineMl: 0 }, { sealMl: 0.17, lineMl: 0 }]
	])('are asked about on a scale that runs %s, and no trap is seen in them', (_n, kit, a, b) => {
		for (const marks of [a, b]) {
			const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', ...marks });
			expect(played.ids()).toContain('fill.swapped');
			expect(played.ids()).not.toContain('fill.byLine');
			const end = new Played(kit).to('titrate').ended();
			end.say({ type: 'marks.read', marks });
			expect(end.ids()).toContain('read.swapped');
		}
	});
	it('side by side they are right, as in a syringe without air between', () => {
		const played = new Played(houseSyringeKit).to('fill');
		played.say({ type: 'titrant.drawn', sealMl: 1, lineMl: 1 });
		expect(played.ids()).toEqual([]);
	});
});

test('of an empty bottle of drops no mark is asked for', () => {
	const played = new Played(houseDropperKit).to('titrate').drops(3).say({ type: 'titrant.spent' });
	expect(played.ids()).toEqual([]);
});

test('where the drops speak against the mark no unit is guessed at', () => {
	// 88 drops of 0.04 mL are 3.52 mL; 6.5 stands at the other end of the scale.
	const played = new Played(houseBuretteKit).to('titrate').drops(88).ended();
	played.say({ type: 'marks.read', marks: { levelMl: 6.5 } });
	expect(played.ids(8)).toEqual(['read.drops']);
});
