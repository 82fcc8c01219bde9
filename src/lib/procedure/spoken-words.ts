/** Units and signs as a voice should say them, longest first: a shorter one may lie inside. */
const said: readonly [RegExp, string][] = [
	[/ppm CaCO3/g, 'parts per million as calcium carbonate'],
	[/\bmeq\/L\b/g, 'milliequivalents per litre'],
	[/\bmmol\/L\b/g, 'millimoles per litre'],
	[/\bmmol\/kg\b/g, 'millimoles per kilogram'],
	[/\bmg\/L\b/g, 'milligrams per litre'],
	[/\bdKH\b/g, 'degrees of carbonate hardness'],
	[/(?<=(?<![\d.,])1 )mL\b/g, 'millilitre'],
	[/\bmL\b/g, 'millilitres'],
	[/(?<=(?<![\d.,])1 )seconds\b/g, 'second'],
	[/(?<=(?<![\d.,])1 )s\b/g, 'second'],
	[/(?<=\d )s\b/g, 'seconds'],
	[/(?<=(?<![\d.,])1 )min\b/g, 'minute'],
	[/(?<=\d )min\b/g, 'minutes'],
	[/\s*°C\b/g, ' degrees Celsius'],
	[/\s*%/g, ' percent'],
	[/\s*±\s*/g, ' plus or minus '],
	[/\s*[×·]\s*/g, ' times '],
	[/(^|\s)[−-](?=\d)/g, '$1minus '],
	[/’/g, "'"],
	[/[…“”]/g, '']
];

/** 0.05 as '0 point 0 5': a voice left alone with a decimal may take it for a date or a time. */
const decimals = (text: string) =>
	text.replace(
		/(?<![\d.,])(\d+)[.,](\d+)(?![\d.,]*\d)/g,
		(_all, whole: string, rest: string) => `${whole} point ${[...rest].join(' ')}`
	);

/** Words as they should be read aloud: units in full, decimals digit by digit, no symbols. */
export function spoken(text: string): string {
	const plain = said.reduce((words, [sign, name]) => words.replace(sign, name), text);
	return decimals(plain).replaceAll(/\s+/g, ' ').trim();
}
