import { describe, expect, it } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import { INTERRUPTED_AFTER_MIN, interruptionIn } from '$lib/procedure';
import { baseKit } from './tank-kits';
import { Played } from './tank-played';

const after = (played: Played, minutes: number) =>
	interruptionIn(played.titration, played.at + minutes * 60_000);
const atDrops = (kit = houseSyringeKit) => new Played(kit).to('titrate');

// Five minutes: common practice, no source.
describe('a pause in the drops', () => {
	it('counts from five minutes on, since the last drop', () => {
		const played = atDrops().drops(3);
		expect(after(played, INTERRUPTED_AFTER_MIN - 0.1)).toBeNull();
		expect(after(played, 12.4)).toMatchObject({ minutes: 12, since: 'drop' });
		expect(after(played, 12)?.advice).toMatch(/fresh sample/i);
	});

	it('is over with the next drop, or any word of the drops, but not with a lamp', () => {
		const played = atDrops().drops(3).wait(600);
		expect(after(played, 0)).toMatchObject({ minutes: 10 });
		expect(after(played.say({ type: 'lamp.changed', lamp: 'white' }), 0)).toMatchObject({
			minutes: 10
		});
		expect(after(played.say({ type: 'vial.swirled' }), 0)).toBeNull();
	});

	it('is none before the drops, while an end is watched, and afterwards', () => {
		expect(after(new Played(houseSyringeKit).to('fill'), 30)).toBeNull();
		const held = atDrops().drops(3).say({ type: 'colour.stayed' });
		expect(after(held, 30)).toBeNull();
		expect(after(held.done(), 30)).toBeNull();
		held.say({ type: 'marks.read', marks: { sealMl: 0.5 } }).done();
		expect(after(held, 30)).toBeNull();
		expect(after(atDrops().drops(3).say({ type: 'walk.abandoned' }), 30)).toBeNull();
	});

	it('goes on while a flash is all that was seen', () => {
		expect(after(atDrops().drops(3).say({ type: 'colour.turned' }), 6)).toMatchObject({
			minutes: 6
		});
	});

	it('before the first drop counts from the sample, less what the leaflet itself lets it stand', () => {
		expect(after(atDrops(), 6)).toMatchObject({ since: 'sample' });
		const asked = baseKit.reagents.reduce(
			(sum, { mixSeconds, waitSeconds }) => sum + mixSeconds + waitSeconds,
			0
		);
		expect(asked).toBe(75);
		// Played in the leaflet's time, nothing was interrupted yet after less than five minutes more.
		expect(after(atDrops(baseKit), 4.5)).toBeNull();
		expect(after(atDrops(baseKit), 6)?.minutes).toBeGreaterThanOrEqual(7);
	});
});
