import { parse } from 'svelte/compiler';
import ts from 'typescript';

/** Names that a machine reads, though they look like the start of a sentence. */
const NAMES = new Set(['Noto Sans', 'Noto Sans Semibold']);

/**
 * Sentences that a script holds itself: a capital letter and more than one word. What an exception says is for us, as it
 * is our own bug.
 */
export function sentencesIn(path: string, source: string): string[] {
  const found: string[] = [];
  for (const script of path.endsWith('.svelte') ? scriptsOf(source) : [source])
    see(ts.createSourceFile(path, script, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS), found);
  return found.filter((text) => /^\p{Lu}\p{Ll}+,? \p{L}/u.test(text) && !NAMES.has(text));
}

function see(node: ts.Node, found: string[]): void {
  if (ts.isThrowStatement(node) || (ts.isNewExpression(node) && node.expression.getText() === 'Error'))
    return;
  if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node)) found.push(node.text);
  ts.forEachChild(node, (child) => see(child, found));
}

function scriptsOf(source: string): string[] {
  const { instance, module } = parse(source, { modern: true });
  return [instance, module].flatMap((script) => {
    if (script == null) return [];
    const { start, end } = script.content as unknown as { start: number; end: number };
    return [source.slice(start, end)];
  });
}
