import { describe, expect, it, test } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit } from '$lib/kits';
import { remarkOffers, valueOfTitration } from '$lib/procedure';
import { bareKit, baseKit, calciumKit, upKit } from './tank-kits';
import { Played } from './tank-played';

const kit = houseSyringeKit;
/** A syringe with its seal at full. */
const filled = (of = kit) => new Played(of).to('fill').say({ type: 'titrant.drawn', sealMl: 1 });
/** As far as the drops: so many, and the end. */
const dropped = (n: number) => filled().to('titrate').drops(n).ended();
const read = (played: Played, marks: object) => played.say({ type: 'marks.read', marks });

describe('clean hands', () => {
	test('hear no warning on the whole way, however much or little they note', () => {
		const much = filled();
		expect(much.remarks()).toEqual([]);
		much.to('titrate').drops(24);
		expect(much.remarks()).toEqual([]);
		much.ended();
		read(much, { sealMl: 0.5, drops: 24 });
		expect(much.remarks(7.7)).toEqual([]);
		much.done();
		expect(much.remarks(7.7)).toEqual([]);

		const little = new Played(kit).to('titrate').say({ type: 'colour.stayed' }, 240).done();
		read(little, { sealMl: 0.52 }).done();
		expect(little.remarks().filter(({ tone }) => tone === 'warn')).toEqual([]);
	});
});

describe('at the filling', () => {
	it('says what filling by the line would cost, with both ways out, and a picture', () => {
		const played = new Played(kit).to('fill');
		played.say({ type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 });
		const [remark] = played.remarks();
		expect(remark).toMatchObject({
			id: 'fill.byLine',
			tone: 'warn',
			offers: ['refillToSeal', 'readLineToo'],
			unit: 'dKH'
		});
		expect(remark?.trap).toMatchObject({ sealMl: 1.17, lineMl: 1 });
		// By hand: 0.17 mL of air at 16 dKH a mL.
		expect(remark?.costValue).toBeCloseTo(2.72, 2);
		// Set back to the seal, it is gone.
		played.say({ type: 'titrant.drawn', sealMl: 1, lineMl: 0.83 });
		expect(played.remarks()).toEqual([]);
	});

	it('later only asks for the line, and is silent once the value rests on marks at both ends', () => {
		const played = new Played(kit).to('fill');
		played.say({ type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 }).to('titrate');
		expect(played.remark('fill.byLine')?.offers).toEqual(['readLineToo']);
		played.drops(24).ended();
		expect(played.remark('fill.byLine')).toBeDefined();
		read(played, { sealMl: 0.67 });
		expect(played.ids()).toEqual([]);
		// By hand: 0.50 mL, 16 a mL, less 0.3.
		expect(valueOfTitration(played.titration, kit).value).toBeCloseTo(7.7, 6);
	});

	it('with only the line noted, asks for the line at the end', () => {
		const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', lineMl: 0.83 });
		expect(played.remarks()).toMatchObject([{ id: 'fill.onlyLine', offers: ['readLineToo'] }]);
	});

	it('says that the tip went on late while it can be filled again, and what its air costs', () => {
		const played = new Played(kit).to('fill');
		played.say({ type: 'titrant.drawn', sealMl: 1, tip: 'off' });
		// Said at the fitting or not: filled without a tip, it is dry.
		played.say({ type: 'tip.fitted' });
		const late = played.remark('fill.tipLate');
		expect(late).toMatchObject({ tone: 'warn', offers: ['refillToSeal'] });
		expect(late?.costValue).toBeCloseTo(0.17 * 16, 1);
		const again = filled().say({ type: 'tip.fitted', liquidInside: true });
		expect(again.remark('fill.tipLate')).toBeDefined();
		again.say({ type: 'titrant.drawn', sealMl: 1 });
		expect(again.ids()).toEqual([]);
		played.to('titrate').drops(3);
		expect(played.remark('fill.tipLate')?.offers).toEqual(['freshSample']);
	});

	it('says that a start beside the full mark is counted from there, and the value is', () => {
		const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', sealMl: 0.9 });
		expect(played.remarks()).toMatchObject([{ id: 'fill.besideFull', tone: 'say' }]);
		played.to('titrate').drops(20).ended();
		read(played, { sealMl: 0.48 });
		expect(valueOfTitration(played.titration, kit)).toMatchObject({ usedMl: expect.closeTo(0.42) });
		expect(played.ids()).toEqual([]);
	});

	it('asks which end is 0 when the full syringe is said to be empty', () => {
		const down = new Played(kit).to('fill').say({ type: 'titrant.drawn', sealMl: 0 });
		expect(down.remarks()[0]).toMatchObject({ id: 'fill.whichEnd', offers: ['readOtherEnd'] });
		const up = new Played(upKit).to('fill').say({ type: 'titrant.drawn', sealMl: 1 });
		expect(up.remarks()[0]).toMatchObject({ id: 'fill.whichEnd' });
	});

	it('speaks of a start that the scale does not have', () => {
		const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', sealMl: 3 });
		expect(played.remarks(8)[0]).toMatchObject({ id: 'fill.offScale', offers: ['countAgain'] });
	});

	it.each([
		['air in the tip', { tipAirMl: 0.05 }, 'fill.air'],
		['a hanging drop', { hangingMl: 0.01 }, 'fill.hanging']
	])('speaks of %s', (_name, found, id) => {
		const played = new Played(kit).to('fill');
		played.say({ type: 'titrant.drawn', sealMl: 1, ...found });
		expect(played.ids()).toEqual([id]);
		played.say({ type: 'tip.wiped' }).say({ type: 'titrant.drawn', sealMl: 1 });
		expect(played.ids()).toEqual([]);
	});

	it('says where the barrel ends before the liquid can be at full: then only the seal can', () => {
		// 1 mL and 0.17 mL of air are more than the 1.1 mL of this barrel.
		expect(new Played(upKit).to('fill').remark('fill.outOfReach')?.text).toContain(
			'Fill by the seal'
		);
		expect(new Played(kit).to('fill').ids()).toEqual([]);
	});

	describe('titrant for what is expected', () => {
		it('is asked for while it can be filled up', () => {
			const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', sealMl: 0.5 });
			// By hand: 8 dKH take (8 + 0.3) / 16 = 0.52 mL; there are 0.50.
			expect(played.remark('fill.tooLittle', 8)?.offers).toEqual(['refillToSeal']);
			expect(played.remark('fill.tooLittle', 5)).toBeUndefined();
			expect(played.remark('fill.tooLittle', null)).toBeUndefined();
		});
		it('leads to the smaller sample before it is measured', () => {
			const played = new Played(kit).say({ type: 'sample.chosen', volumeId: 'fine' });
			// 11 dKH in 10 mL: 11 · 10/6 = 18.3 dKH of a full syringe's 15.7.
			expect(played.remark('fill.tooLittle', 11)).toMatchObject({ offers: ['useSmallerSample'] });
			expect(played.remark('fill.tooLittle', 11)?.text).toContain('6 mL');
			played.say({ type: 'sample.chosen', volumeId: 'normal' });
			expect(played.remark('fill.tooLittle', 11)).toBeUndefined();
		});
	});
});

describe('preparing', () => {
	it('a wait cut short is spoken of until it has been made up for', () => {
		const played = new Played(baseKit).to('wait').done(12);
		expect(played.remark('wait:wait-base')).toMatchObject({ tone: 'warn' });
		played.wait(60);
		expect(played.ids()).toEqual([]);
		expect(new Played(baseKit).to('wait').skip(1).remark('wait:wait-base')?.text).toContain('60 s');
		expect(new Played(baseKit).to('wait').say({ type: 'wait.over' }, 60).done().ids()).toEqual([]);
	});

	it('a mix passed over is spoken of, one of which nobody noted the time is not', () => {
		expect(new Played(baseKit).to('mix').skip(2).remark('mix:mix-base')).toBeDefined();
		const noted = new Played(baseKit).to('mix').say({ type: 'vial.swirled' }).done(1);
		expect(noted.ids()).toEqual([]);
		const timed = new Played(baseKit).to('mix').say({ type: 'vial.swirled', seconds: 10 }).done(1);
		expect(timed.ids()).toEqual([]);
	});

	it('another dose than asked for is spoken of when it was said', () => {
		const dose = (amount: number | undefined, reagentId = 'indicator') =>
			new Played(kit).to('dose').say({ type: 'reagent.added', reagentId, amount });
		expect(dose(5).remark('dose:indicator')).toMatchObject({ tone: 'say' });
		// Too few only when the step is over: more may come.
		expect(dose(2).ids()).toEqual([]);
		expect(dose(2).done().ids()).toEqual(['dose:indicator']);
		expect(dose(3).done().ids()).toEqual([]);
		expect(dose(undefined).done().ids()).toEqual([]);
		expect(new Played(kit).to('dose').done().ids()).toEqual([]);
		expect(new Played(kit).to('dose').skip().remark('dose:indicator')?.text).toMatch(/^No /);
		const base = new Played(baseKit).to('dose');
		base.say({ type: 'reagent.added', reagentId: 'base', amount: 1 }).done();
		expect(base.remark('dose:base')).toMatchObject({ tone: 'warn', offers: ['freshSample'] });
	});

	it('blue or dim light is spoken of from the first reagent until the end, unless it was changed', () => {
		for (const light of ['blue', 'dim'] as const) {
			const played = new Played(kit, { light });
			expect(played.ids()).toEqual([]);
			played.to('dose');
			expect(played.remarks()).toMatchObject([{ id: 'light', offers: ['whiteLight'] }]);
			played.to('titrate').say({ type: 'lamp.changed', lamp: 'white' });
			expect(played.ids()).toEqual([]);
		}
		const judged = new Played(kit, { light: 'blue' }).to('titrate').drops(5).ended();
		expect(judged.ids()).toEqual(['end.wrongLight']);
		expect(new Played(kit, { light: 'white' }).to('titrate').drops(5).ended().ids()).toEqual([]);
	});

	it.each([
		['dosed within the hour', { hoursSinceDose: 0.5 }, 'water.dosed'],
		['from the outlet', { takenWhere: 'at the return outlet' }, 'water.outlet'],
		['top-off water', { water: 'topOff' }, 'water.other'],
		['a known solution', { water: 'reference', hoursSinceDose: 0 }, 'water.other']
	] as const)('water %s is spoken of before it is measured, and at the result', (_n, said, id) => {
		const played = new Played(kit, said);
		expect(played.ids()).toEqual([id]);
		played.to('fill');
		expect(played.ids()).toEqual([]);
		played.to('titrate').drops(20).ended();
		read(played, { sealMl: 0.58 }).done();
		expect(played.ids()).toContain(id);
	});
	test('water of the tank an hour after a dose is not', () => {
		const said = { water: 'tank', hoursSinceDose: 1, takenWhere: 'front, in the flow' } as const;
		expect(new Played(kit, said).ids()).toEqual([]);
	});
});

describe('at the drops', () => {
	const atDrops = (n = 6) => filled().to('titrate').drops(n);

	it('nothing is said while drops fall, however many', () => {
		expect(atDrops(1).remarks()).toEqual(atDrops(40).remarks());
	});

	it('a flash is told from what stays by the kit’s own time, and then what comes after', () => {
		const played = atDrops().say({ type: 'colour.turned' });
		expect(played.remarks()).toMatchObject([{ id: 'titrate.flash', tone: 'say' }]);
		expect(played.remarks()[0]?.text).toContain('25 s');
		played.say({ type: 'colour.stayed' }, 3);
		expect(played.ids()).toEqual(['titrate.hold']);
		played.wait(25);
		expect(played.ids()).toEqual(['titrate.after']);
		played.say({ type: 'colour.faded' });
		expect(played.ids()).toEqual(['titrate.cameBack']);
		const flash = atDrops().say({ type: 'colour.stayed' }, 3).say({ type: 'colour.faded' }, 2);
		expect(flash.ids()).toEqual(['titrate.wasFlash']);
	});

	it('an end taken too soon is spoken of when it is taken, and not before', () => {
		const played = atDrops().say({ type: 'colour.stayed' }, 2);
		expect(played.ids()).toEqual(['titrate.hold']);
		played.done(3);
		expect(played.ids()).toEqual(['end.stoppedAtFlash']);
		expect(atDrops().say({ type: 'colour.stayed' }, 2).done(30).ids()).toEqual([]);
	});

	it('nobody is held to the moment of the press who watched the colour afterwards', () => {
		const said = () => filled().to('titrate').drops(24).say({ type: 'colour.turned' }, 2);
		const watched = said().say({ type: 'colour.stayed', secondsSinceDrop: 4 }, 4).done(24);
		expect(read(watched, { sealMl: 0.5 }).ids()).toEqual([]);
		const hasty = said().say({ type: 'colour.stayed', secondsSinceDrop: 4 }, 4).done(3);
		expect(read(hasty, { sealMl: 0.5 }).ids()).toEqual(['end.stoppedAtFlash']);
	});

	it('drops counted up afterwards say nothing of when they fell', () => {
		const played = filled().to('titrate').say({ type: 'titrant.fell', drops: 25 }, 120);
		played.say({ type: 'colour.stayed' }, 1).done(1);
		expect(played.ids()).toEqual([]);
		const pressed = filled().to('titrate').drops(20, 0.2);
		pressed.say({ type: 'colour.stayed' }, 1).done(1);
		expect(pressed.ids()).toEqual([]);
	});

	it('several at once at the end are spoken of after it, with what they may cost', () => {
		const played = atDrops().drops(1, 4).drops(2, 0.7).say({ type: 'colour.stayed' }, 1);
		expect(played.ids()).not.toContain('end.overshot');
		played.done(30);
		// Three in a row: up to two too many.
		const remark = played.remark('end.overshot');
		expect(remark?.costValue).toBeCloseTo(2 * 0.021 * 16, 1);
		const batch = atDrops().say({ type: 'titrant.fell', drops: 3 }, 1).ended();
		expect(batch.remark('end.overshot')).toBeDefined();
		expect(atDrops().say({ type: 'titrant.fell', drops: 3 }, 20).ended().ids()).toEqual([]);
	});

	it('no swirl noted says nothing, and swirls without end are spoken of', () => {
		expect(atDrops(12).ended().ids()).toEqual([]);
		const shaken = atDrops().say({ type: 'vial.swirled', seconds: 200 }, 200).ended();
		expect(shaken.ids()).toEqual(['end.swirledOddly']);
	});

	it('going on after an end that had stood is spoken of at the end', () => {
		const played = atDrops().say({ type: 'colour.stayed' }, 5).say({ type: 'colour.faded' }, 40);
		played.drops(2).ended();
		expect(played.ids()).toEqual(['end.chasedColour']);
		const flash = atDrops().say({ type: 'colour.stayed' }, 1).say({ type: 'colour.faded' }, 3);
		expect(flash.drops(2).ended().ids()).toEqual([]);
	});

	it('an empty syringe: refill, or less water where the leaflet has it, else thinned', () => {
		const normal = atDrops().say({ type: 'titrant.spent' });
		expect(normal.remark('titrate.spent')?.offers).toEqual(['refill', 'dilute']);
		const fine = new Played(kit).say({ type: 'sample.chosen', volumeId: 'fine' }).to('titrate');
		fine.drops(3).say({ type: 'titrant.spent' });
		expect(fine.remark('titrate.spent')?.offers).toEqual(['refill', 'useSmallerSample']);
		fine.say({ type: 'titrant.drawn', sealMl: 1 });
		expect(fine.ids()).toEqual([]);
	});

	it('a drop left hanging is spoken of while it can be touched off', () => {
		const played = atDrops().say({ type: 'colour.stayed', hangingMl: 0.015 });
		expect(played.ids()[0]).toBe('titrate.hanging');
		const left = played.done(30);
		expect(left.remark('end.hangingAtEnd')?.costValue).toBeCloseTo(0.015 * 16, 1);
	});
});

describe('at the reading', () => {
	it('a numeral that the scale does not have', () => {
		expect(read(dropped(20), { sealMl: 5.2 }).remarks()).toMatchObject([
			{ id: 'read.offScale', offers: ['countAgain'] }
		]);
		const up = new Played(upKit).to('titrate').drops(20).ended();
		expect(read(up, { sealMl: -0.3 }).ids()).toEqual(['read.offScale']);
	});

	it('a numeral on the other side of the start', () => {
		const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', sealMl: 0.4 });
		played.to('titrate').say({ type: 'colour.stayed' }).done(30);
		expect(read(played, { sealMl: 0.9 }).remarks()[0]).toMatchObject({
			id: 'read.wrongSide',
			offers: ['readOtherEnd']
		});
		expect(read(played, { sealMl: 0.55 }).remarks()[0]).toMatchObject({ offers: ['countAgain'] });
		// Above the full mark: from the other end it would stand below 0, where no line is.
		const over = read(dropped(24), { sealMl: 1.2 }).remark('read.wrongSide');
		expect(over?.offers).toEqual(['countAgain']);
		expect(over?.text).not.toContain('−');
	});

	it('thirty-one drops against a mark from the other end: both numbers, and the way out', () => {
		// By hand: 31 · 0.021 = 0.65 mL, so the seal stands at 0.35; 0.65 was written down.
		const played = read(dropped(31), { sealMl: 0.65 });
		const [remark] = played.remarks();
		expect(remark).toMatchObject({ id: 'read.drops', offers: ['readOtherEnd', 'countAgain'] });
		expect(remark?.text).toContain('31 drops make about 0.65 mL; your mark says 0.35');
		expect(read(dropped(31), { sealMl: 0.35 }).ids()).toEqual([]);
		// Nobody asks for the other end where it fits no better.
		expect(read(dropped(31), { sealMl: 0.12 }).remark('read.drops')?.offers).toEqual([
			'countAgain'
		]);
	});

	it('without drops, the last value tells the other end', () => {
		const uncounted = () => filled().to('titrate').say({ type: 'colour.stayed' }, 200).done(30);
		// 0.62 read for 0.38 used: 9.6 against 5.8 of the last test.
		const played = read(uncounted(), { sealMl: 0.62 });
		expect(played.ids(9.6)).toEqual(['read.otherEnd']);
		expect(played.ids(6)).toEqual([]);
		expect(played.ids(null)).toEqual([]);
	});

	it('short of the last test by one whole filling: was it filled again?', () => {
		const uncounted = () => filled().to('titrate').say({ type: 'colour.stayed' }, 200).done(30);
		// 0.70 used is 10.9 dKH; a whole filling more, 1 mL at 16, makes 26.9.
		const played = read(uncounted(), { sealMl: 0.3 });
		expect(played.ids(26.9)).toEqual(['read.refillForgotten']);
		expect(played.remark('read.refillForgotten', 26.9)).toMatchObject({
			tone: 'warn',
			costValue: expect.closeTo(16, 9),
			unit: 'dKH'
		});
		expect(played.ids(11)).toEqual([]);
		expect(played.ids(19)).not.toContain('read.refillForgotten');
		expect(played.ids(null)).toEqual([]);
	});

	it('one mark at the start, the other at the end: the value goes through the tip, and says so', () => {
		const played = new Played(kit).to('fill').say({ type: 'titrant.drawn', lineMl: 1 });
		played.to('titrate').drops(24).ended();
		read(played, { sealMl: 0.67 });
		expect(played.remark('read.mixed')).toMatchObject({ offers: ['readLineToo'] });
		// The tip's 2.7 dKH are in the value already: it is not off by them.
		expect(played.remark('read.mixed')?.costValue).toBeUndefined();
		read(played, { sealMl: 0.67, lineMl: 0.5 });
		expect(played.ids()).toEqual([]);
	});

	it('seal and line that moved by different amounts', () => {
		const played = new Played(kit)
			.to('fill')
			.say({ type: 'titrant.drawn', sealMl: 1, lineMl: 0.83 });
		played.to('titrate').drops(24).ended();
		expect(read(played, { sealMl: 0.5, lineMl: 0.33 }).ids()).toEqual([]);
		expect(
			read(played, { sealMl: 0.5, lineMl: 0.2 }).remark('read.cushion')?.costValue
		).toBeCloseTo(0.13 * 16, 1);
	});

	it('next to nothing: top-off water, or more sample', () => {
		const nothing = read(filled().to('titrate').drops(2).ended(), { sealMl: 0.96 });
		expect(nothing.remark('read.nearly0')?.offers).toEqual(['freshSample', 'useLargerSample']);
		const none = read(filled().to('titrate').ended(), { sealMl: 1 });
		expect(none.ids()).toEqual(['read.below0']);
		const topOff = new Played(kit, { water: 'topOff' }).to('titrate').ended();
		expect(read(topOff, { sealMl: 0.98 }).remark('read.nearly0')).toMatchObject({ tone: 'say' });
	});

	it('a refill of which one mark is the seal, the other the line', () => {
		const played = filled().to('titrate').drops(40);
		played.say({ type: 'titrant.drawn', before: { lineMl: 0.02 }, sealMl: 1 });
		expect(played.remark('refill:0')?.text).toMatch(/same mark both times/);
		expect(played.remark('refill:0')?.costValue).toBeCloseTo(0.17 * 16, 1);
	});

	it('more than the table reaches after a refill is carried on, and said', () => {
		const played = filled().to('titrate').drops(40);
		played
			.say({ type: 'titrant.drawn', before: { sealMl: 0.1 }, sealMl: 1 })
			.drops(18)
			.ended();
		read(played, { sealMl: 0.62 });
		// By hand: 0.90 + 0.38 mL at 16, less 0.3; the table is printed to 0.01.
		expect(valueOfTitration(played.titration, kit).value).toBeCloseTo(20.18, 1);
		expect(played.remarks()).toMatchObject([
			{ id: 'read.beyond', tone: 'say', offers: ['dilute'] }
		]);
	});

	it('a table that bends tells nothing beyond', () => {
		const bent = {
			...houseSyringeKit,
			conversion: {
				kind: 'rows' as const,
				column: 'usedMl' as const,
				rows: [0, 0.3, 0.6].map((at) => ({ at, value: 10 * at + 20 * at * at }))
			}
		};
		const played = new Played(bent).to('titrate').ended();
		read(played, { sealMl: 0.2 });
		expect(valueOfTitration(played.titration, bent).value).toBeNull();
		expect(played.remarks()).toMatchObject([{ id: 'read.beyond', tone: 'warn' }]);
	});

	it('another number of drops than was tapped', () => {
		const dropper = new Played(houseDropperKit).to('titrate').drops(13).ended();
		expect(read(dropper, { drops: 14 }).remarks()).toMatchObject([
			{ id: 'read.tally', offers: ['countAgain'] }
		]);
		expect(read(dropper, { drops: 13 }).ids()).toEqual([]);
	});

	it('a value off the last by the ratio of the samples', () => {
		// 8 dKH in 10 mL that is valued as 6 mL: 13.3.
		const played = read(filled().to('titrate').ended(), { sealMl: 0.15 });
		expect(valueOfTitration(played.titration, kit).value).toBeCloseTo(13.3, 1);
		expect(played.ids(8)).toEqual(['read.otherSample']);
	});

	it.each([
		// 1 meq/L is 2.80 dKH, and 1 dKH 17.85 ppm CaCO3 (definitions of the units).
		['meq/L', 2.7, 7.56],
		['ppm CaCO₃', 130, 7.28]
	])('a leaflet that gives %s, taken for dKH', (name, value, expected) => {
		const other = {
			...bareKit,
			conversion: { kind: 'perDrop' as const, valuePerDrop: value / 10, offset: 0 }
		};
		const played = read(new Played(other).to('titrate').ended(), { drops: 10 });
		expect(played.remark('read.otherUnit', expected)?.text).toContain(name);
		expect(played.remark('read.otherUnit', value)).toBeUndefined();
	});

	it('a burette noted at both ends has nothing to be told', () => {
		const played = new Played(houseBuretteKit)
			.to('fill')
			.say({ type: 'titrant.drawn', levelMl: 0 });
		played.to('titrate').drops(80, 3).ended();
		expect(read(played, { levelMl: 3.4 }).ids()).toEqual([]);
	});
});

test('a walk that was given up has nothing to be told', () => {
	const played = new Played(kit, { light: 'blue' }).to('titrate').drops(3);
	expect(played.remarks()).not.toEqual([]);
	expect(played.say({ type: 'walk.abandoned' }).remarks()).toEqual([]);
});

test('a pause in the drops is a remark, and a fresh sample its way out', () => {
	const played = filled()
		.to('titrate')
		.drops(3)
		.wait(6 * 60);
	expect(played.remark('titrate.pause')).toMatchObject({ tone: 'warn', offers: ['freshSample'] });
});

test('warnings come before what is only good to know', () => {
	const played = new Played(kit, { light: 'blue' }).to('fill');
	played.say({ type: 'titrant.drawn', sealMl: 0.9, hangingMl: 0.01 });
	const tones = played.remarks().map(({ tone }) => tone);
	expect(tones).toEqual(['warn', 'say', 'say']);
	for (const { offers } of played.remarks())
		for (const offer of offers ?? []) expect(remarkOffers).toContain(offer);
});

describe('an end with EDTA', () => {
	const at = () => new Played(calciumKit).to('fill').say({ type: 'titrant.drawn', sealMl: 1 });

	it('that turns back was none: on with the drops, and no slip', () => {
		const played = at().to('titrate').drops(24).say({ type: 'colour.stayed' }, 60);
		expect(played.remark('titrate.after')?.text).toMatch(/^If blue turns back within a minute/);
		played.say({ type: 'colour.faded' }, 20);
		expect(played.remark('titrate.cameBack')?.text).toMatch(
			/^Blue that turns back was not the end/
		);
		played.drops(2).ended();
		read(played, { sealMl: 0.46 });
		expect(played.ids().filter((id) => id.startsWith('end.'))).toEqual([]);
	});

	it('with a syringe that the leaflet has filled again', () => {
		expect(new Played(calciumKit).to('fill').remark('fill.tooLittle', 415)?.text).toMatch(
			/about 3 fillings/
		);
		const spent = at().to('titrate').say({ type: 'titrant.spent' });
		expect(spent.remark('titrate.spent')).toMatchObject({ offers: ['refill'] });
		expect(spent.remark('titrate.spent')?.text).not.toMatch(/begin again/);
	});
});
