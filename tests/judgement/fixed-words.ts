import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as ts from 'typescript';

export type FixedWords = { file: string; line: number; words: string };

/** Type names, ids, paths and units are no sentences: only what has a space in it is said to anybody. */
const isSaid = (words: string) => /\S\s\S/.test(words.trim());

/** Every fixed sentence of a folder's source, those of templates with '…' for what is filled in. */
export function fixedWordsIn(folder: string): FixedWords[] {
	return readdirSync(folder, { recursive: true, encoding: 'utf8' })
		.filter((name) => name.endsWith('.ts'))
		.flatMap((name) => {
			const text = readFileSync(join(folder, name), 'utf8');
			const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
			const found: FixedWords[] = [];
			const add = (node: ts.Node, words: string) => {
				const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
				if (isSaid(words)) found.push({ file: name, line, words });
			};
			const visit = (node: ts.Node): void => {
				if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
				if (ts.isStringLiteralLike(node)) add(node, node.text);
				if (ts.isTemplateExpression(node))
					add(
						node,
						node.head.text + node.templateSpans.map((span) => `…${span.literal.text}`).join('')
					);
				ts.forEachChild(node, visit);
			};
			visit(source);
			return found;
		});
}
