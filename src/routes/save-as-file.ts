/** Hands a text to the browser to be saved as a file of this name. */
export function saveAsFile(name: string, text: string, type = 'application/json'): void {
	const address = URL.createObjectURL(new Blob([text], { type }));
	const link = document.createElement('a');
	link.href = address;
	link.download = name;
	link.click();
	// The download has its own hold on the data by then.
	setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
