import { replaceState } from '$app/navigation';
import { checkInHash } from './ways';

/** The check that the address names, on a page that serves one: '#check=ID'. */
export class AddressCheck {
	id: string | null = $state(null);

	/** Looks at the address: at first, and whenever it may have changed. */
	read(): void {
		const asked = checkInHash(location.hash);
		// A link to a part of this page: the address keeps the check, for when the page is loaded anew.
		if (asked === null && this.id !== null) replaceState(`#check=${this.id}`, {});
		else this.id = asked;
	}
}
