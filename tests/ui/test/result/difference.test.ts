import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import type { Analyte, Kit } from '../../../../src/lib/kits';
import type { TestSummary } from '../../../../src/lib/observation';
import type { TakeOffCandidate } from '../../../../src/lib/ui/test/result/difference/taken-off';
import ResultScreen from '../../../../src/lib/ui/test/result/ResultScreen.svelte';
import { calciumKit, hardnessKit } from '../../../procedure/tank-kits';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, section, words } from './result-dom';

afterEach(cleanup);

const DAY = 86_400_000;
const now = Date.UTC(2024, 2, 3, 19, 30);
const ofCalcium = (more: Partial<TestSummary> = {}): TestSummary => ({
	value: 412.8,
	unit: 'mg/L',
	standardUncertainty: 8,
	expandedUncertainty: 16,
	repeatabilitySd: 3,
	values: [412.8],
	sampleVolumeMl: 5,
	isSuspect: false,
	shared: { sampleVolume: 6, titrantStrength: 4, endColour: 1 },
	...more
});
const candidate = (id: string, more: Partial<TakeOffCandidate> = {}): TakeOffCandidate => ({
	testId: id,
	summary: ofCalcium(),
	kitId: calciumKit.id,
	kitName: calciumKit.name,
	testedAtEpochMs: now - 3_600_000,
	...more
});
const units: Partial<Record<Analyte, 'mg/L' | 'mmol/L'>> = {};

/** 1.59 mL in two fillings, 63.6 mmol/L of both. */
function shown(candidates: TakeOffCandidate[], kit: Kit = hardnessKit) {
	const run = new PlayedTank({ kit, startedAt: now });
	run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: 1 });
	run.goOnTo('titrate').say({ type: 'titrant.drawn', before: { sealMl: 0.02 }, sealMl: 1 });
	run.walkThrough({ sealMl: 0.39 });
	render(ResultScreen, {
		run,
		unit: 'mmol/L',
		unitOfOther: (analyte: Analyte) => units[analyte] ?? 'mg/L',
		last: null,
		candidates
	});
	return run;
}
const magnesium = () => section('Magnesium');

describe('magnesium by difference', () => {
	it('the nearest calcium test is offered first; taken off, the sum stands there in moles', async () => {
		const user = userEvent.setup();
		const old = candidate('old', {
			summary: ofCalcium({ value: 380 }),
			testedAtEpochMs: now - 9 * DAY
		});
		const run = shown([candidate('near'), old]);
		expect(screen.getByRole('radio', { name: /413 ± 16 mg\/L/ })).toBeChecked();
		expect(screen.getByRole('radio', { name: /380 ± 16 mg\/L.*9 days before/ })).not.toBeChecked();
		// Nobody said who tested: the same eyes are likely, the same ware is not known.
		expect(screen.getByRole('checkbox', { name: 'The same eyes' })).toBeChecked();
		expect(screen.getByRole('checkbox', { name: 'The sample syringe' })).not.toBeChecked();
		await user.click(screen.getByRole('checkbox', { name: 'The sample syringe' }));
		await user.click(button('Take it off'));
		// By hand: 63.6 − 412.8 / 40.078 = 53.3 mmol/L, and that times 24.305 is 1295 mg/L, to the tens that its ± allows.
		expect(magnesium()).toMatch(/about 1300 ± \d0 mg\/L/);
		expect(magnesium()).toMatch(/Calcium and magnesium together\s*63\.60? ± \d\.\d+/);
		expect(magnesium()).toMatch(/less calcium\s*10\.30? ± 0\.40?/);
		expect(magnesium()).toMatch(/leaves magnesium\s*53\.30? ± \d\.\d+/);
		expect(magnesium()).toContain('In both tests: the sample syringe, the same eyes.');
		// 24.305 / 40.078 of ten.
		expect(magnesium()).toContain(
			'10 mg/L more of calcium would leave 6.1 mg/L less of magnesium.'
		);
		expect(run.state.difference).toMatchObject({
			less: { value: 412.8, from: { is: 'test', testId: 'near' } },
			inCommon: ['sampler', 'hands']
		});
	});

	it('it can be changed, and taken back', async () => {
		const user = userEvent.setup();
		const run = shown([candidate('near')]);
		await user.click(button('Take it off'));
		await user.click(button('Change the calcium'));
		await user.click(screen.getByRole('radio', { name: /which I type/ }));
		await user.type(field('Calcium, mg/L'), '4oo');
		await user.click(button('Take it off'));
		expect(field('Calcium, mg/L')).toHaveAccessibleDescription(/“4oo” is no number/);
		await user.clear(field('Calcium, mg/L'));
		await user.type(field('Calcium, mg/L'), '420');
		await user.click(screen.getByRole('radio', { name: 'assumed' }));
		await user.click(button('Take it off'));
		expect(magnesium()).toContain('Calcium is an assumption here, not a measurement');
		// Empty ±: a tenth of the value.
		expect(magnesium()).toMatch(/420 ± 40 mg\/L of calcium taken off, assumed/);
		await user.click(button('Take it back'));
		expect(magnesium()).toMatch(/413 ± 16 mg\/L of calcium taken off/);
		await user.click(button('Take it back'));
		expect(magnesium()).not.toMatch(/about/);
		expect(run.state.difference).toBeNull();
	});

	it('a test of days ago is warned of, and one whose leaflet was corrected since says so', async () => {
		const user = userEvent.setup();
		const old = candidate('old', { testedAtEpochMs: now - 9 * DAY });
		const run = shown([old]);
		await user.click(button('Take it off'));
		expect(magnesium()).toContain('The calcium test is 9 days older than this one');
		cleanup();
		const corrected = { ...old, summary: ofCalcium({ value: 430 }) };
		render(ResultScreen, { run, unit: 'mmol/L', last: null, candidates: [corrected] });
		expect(magnesium()).toContain('That test says 430 ± 16 mg/L today');
	});

	it('without a calcium test one is typed; a kit for something else asks nothing', () => {
		shown([]);
		expect(magnesium()).toContain('No calcium test is in the log: type a value');
		expect(field('Calcium, mg/L')).toBeInTheDocument();
		cleanup();
		const { byDifference: _none, ...plain } = hardnessKit;
		shown([], plain);
		expect(screen.queryByRole('region', { name: 'Magnesium' })).not.toBeInTheDocument();
		expect(words()).not.toMatch(/dKH/);
	});
});
