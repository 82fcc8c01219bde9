import { describe, expect, it } from 'vitest';
import { houseDropperKit } from '../../../../src/lib/kits';
import { replayTest, stepOf } from '../../../../src/lib/procedure';
import { PlayedTank } from '../../played-tank.svelte';

const stepId = (tank: PlayedTank) => stepOf(tank.titration.walk.context)?.id;

describe('a played test', () => {
	it('walks to a result, and its log replays to the same state', () => {
		const tank = new PlayedTank().walkThrough({ sealMl: 0.46 });
		expect(tank.state.phase).toBe('result');
		expect(replayTest(tank.log).phase).toBe('result');
		expect(tank.titration.events.at(-2)?.event).toEqual({
			type: 'marks.read',
			marks: { sealMl: 0.46 }
		});
	});

	it('takes back the last thing said, and refuses what does not belong', () => {
		const tank = new PlayedTank({ kit: houseDropperKit }).goOnTo('measure');
		expect(tank.say({ type: 'titrant.fell', drops: 1 })).toBe(false);
		tank.undo();
		expect(stepId(tank)).toBe('rinse-vial');
	});

	it('puts other marks in the place of those read, and begins afresh', () => {
		const tank = new PlayedTank().walkThrough({ sealMl: 0.46 });
		tank.amendMarks(0, { sealMl: 0.64 });
		expect(tank.titration.events.at(-2)?.event).toMatchObject({ marks: { sealMl: 0.64 } });
		tank.begin('repeat');
		tank.goOnTo('titrate').beginAgain();
		expect(tank.titration).toMatchObject({ number: 2, purpose: 'freshSample' });
	});
});
