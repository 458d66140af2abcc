import ts from 'typescript';

/**
 * Texts of a source that look like ones for a person, in its literals: two or more words, with a full stop at the end or a
 * lower-case word behind the first. Of markup only what stands between tags counts, of a template what stands between its
 * values (shown as …). Types, names of properties, lists that are `as const`, what is only compared with, classes in a
 * drawing, and errors that are thrown are none.
 */
export function coreTexts(path: string, code: string): string[] {
  const found: string[] = [];
  const see = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    const text = textOf(node);
    if (text !== null && looksWritten(text) && !isForTheProgram(node)) found.push(text);
    ts.forEachChild(node, see);
  };
  see(ts.createSourceFile(path, code, ts.ScriptTarget.Latest, true));
  return found;
}

/** Names of properties and words of literal types: what code and files call things by. */
export function identifiersIn(path: string, code: string): string[] {
  const found: string[] = [];
  const see = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && ts.isStringLiteral(node.name)) found.push(node.name.text);
    if (ts.isLiteralTypeNode(node) && ts.isStringLiteral(node.literal)) found.push(node.literal.text);
    ts.forEachChild(node, see);
  };
  see(ts.createSourceFile(path, code, ts.ScriptTarget.Latest, true));
  return found;
}

/** What a literal says; null for any other node. */
function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return withoutMarkup(node.text);
  if (!ts.isTemplateExpression(node)) return null;
  const spans = node.templateSpans.map(({ literal }) => `…${literal.text}`);
  return withoutMarkup(node.head.text + spans.join(''));
}

function withoutMarkup(text: string): string {
  const between = text.replace(/<style>[\s\S]*<\/style>/g, '').replace(/^[^<>]*="[^>]*>|<[^>]*(?:>|$)/g, ' ');
  return between.replace(/\s+/g, ' ').trim();
}

function looksWritten(text: string): boolean {
  const words = text.match(/\p{L}[\p{L}'’-]+/gu) ?? [];
  return words.length >= 2 && (text.endsWith('.') || /\s\p{Ll}[\p{L}'’-]+/u.test(text));
}

/** Functions that take a class of a drawing first. */
const DRAWS = ['stroke', 'strokes', 'text', 'vehicle'];

function isForTheProgram(node: ts.Node): boolean {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return true;
  if (ts.isArrayLiteralExpression(parent) && ts.isAsExpression(parent.parent)) return true;
  if (ts.isNewExpression(parent)) return true;
  if (ts.isCaseClause(parent) || ts.isElementAccessExpression(parent)) return true;
  if (ts.isBinaryExpression(parent)) return /^[!=]==$/.test(parent.operatorToken.getText());
  return (
    ts.isCallExpression(parent) && parent.arguments[0] === node && DRAWS.includes(parent.expression.getText())
  );
}
