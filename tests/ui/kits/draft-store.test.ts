import { afterEach, describe, expect, test, vi } from 'vitest';
import { draftOfKit, houseDropperKit, houseSyringeKit } from '../../../src/lib/kits';
import { allDrafts, putDraft } from '../../../src/lib/ui/kits/draft-store';

const KEY = 'halfdrop.kit-drafts';
const syringe = draftOfKit(houseSyringeKit);
const dropper = draftOfKit(houseDropperKit);

describe('what was typed in and not kept', () => {
	afterEach(() => {
		for (const place of Object.keys(allDrafts())) putDraft(place, null);
		localStorage.clear();
		vi.restoreAllMocks();
	});
	test('is there again, each at its place, until it is forgotten', () => {
		putDraft('new', syringe);
		putDraft('#kit=a', dropper);
		expect(allDrafts()).toEqual({ new: syringe, '#kit=a': dropper });
		putDraft('new', null);
		expect(allDrafts()).toEqual({ '#kit=a': dropper });
	});
	test('a damaged one is lost alone', () => {
		localStorage.setItem(KEY, JSON.stringify({ new: { format: 9 }, '#kit=a': dropper }));
		expect(allDrafts()).toEqual({ '#kit=a': dropper });
	});
	test('another window’s typing at another place stays', () => {
		putDraft('new', syringe);
		localStorage.setItem(KEY, JSON.stringify({ new: syringe, '#kit=b': dropper }));
		putDraft('new', { ...syringe, name: 'Later' });
		expect(Object.keys(allDrafts()).sort()).toEqual(['#kit=b', 'new']);
	});
	test('where storage is refused it lasts as long as the page', () => {
		vi.spyOn(Storage.prototype, 'getItem').mockImplementation(() => {
			throw new DOMException('forbidden', 'SecurityError');
		});
		vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
			throw new DOMException('full', 'QuotaExceededError');
		});
		putDraft('new', syringe);
		expect(allDrafts()).toEqual({ new: syringe });
	});
});
