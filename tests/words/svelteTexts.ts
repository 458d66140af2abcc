import { parse } from 'svelte/compiler';

/** Attributes that a person reads or hears; `label` is what our own components hand on as one. */
const READ = new Set(['aria-label', 'aria-valuetext', 'title', 'placeholder', 'alt', 'label']);

/** What is no word of any language. */
const NO_WORDS = new Set(['Rutline', 'km', 'm']);

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** Every text that a Svelte file holds itself, in markup or in what an attribute says, where the catalogue should. */
export function ownTexts(source: string): string[] {
  const found: string[] = [];
  const { fragment } = parse(source, { modern: true });
  see(fragment as unknown as Node, found);
  return found.map((text) => text.trim().replace(/\s+/g, ' ')).filter(isWords);
}

function see(node: Node, found: string[]): void {
  if (node.type === 'Text') found.push(node.data as string);
  else if (node.type === 'ExpressionTag') found.push(...yielded(node.expression as Node));
  else if (node.type === 'Attribute') {
    if (READ.has(node.name as string)) for (const part of partsOf(node.value)) see(part, found);
  } else for (const child of childrenOf(node)) see(child, found);
}

/** The value of an attribute as a list of texts and expressions; an attribute without a value has none. */
function partsOf(value: unknown): readonly Node[] {
  if (typeof value !== 'object' || value === null) return [];
  return (Array.isArray(value) ? value : [value]) as readonly Node[];
}

/** Markup below a node; expressions of blocks and of event handlers are code. */
function childrenOf(node: Node): readonly Node[] {
  const lists = ['nodes', 'attributes'].flatMap((key) => (node[key] as readonly Node[] | undefined) ?? []);
  const fragments = [
    'fragment',
    'body',
    'consequent',
    'alternate',
    'fallback',
    'pending',
    'then',
    'catch',
  ].flatMap((key) => {
    const child = node[key] as Node | null | undefined;
    return child?.type === 'Fragment' ? [child] : [];
  });
  return [...lists, ...fragments];
}

/** Texts written out in what an expression may come to. */
function yielded(expression: Node): string[] {
  switch (expression.type) {
    case 'Literal':
      return typeof expression.value === 'string' ? [expression.value] : [];
    case 'TemplateLiteral':
      return [
        ...(expression.quasis as readonly { value: { cooked: string } }[]).map(({ value }) => value.cooked),
        ...(expression.expressions as readonly Node[]).flatMap(yielded),
      ];
    case 'ConditionalExpression':
      return [expression.consequent, expression.alternate].flatMap((side) => yielded(side as Node));
    case 'LogicalExpression':
    case 'BinaryExpression':
      return expression.operator === '+' || expression.type === 'LogicalExpression'
        ? [expression.left, expression.right].flatMap((side) => yielded(side as Node))
        : [];
    default:
      return [];
  }
}

function isWords(text: string): boolean {
  return /\p{L}/u.test(text) && !NO_WORDS.has(text);
}
