/** Markup that is safe to show: only `html` and `drawing` make it, so nothing that a person typed can become markup. */
export class Html {
  constructor(readonly markup: string) {}
}

type Part = string | number | Html | readonly Html[];

/** Markup with values put in; texts are escaped, markup is not, lists are joined. */
export function html(markup: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return new Html(markup.reduce((whole, next, i) => whole + markupOf(parts[i - 1]) + next));
}

/** A drawing of ours as markup. */
export function drawing(svg: string): Html {
  return new Html(svg);
}

export const NOTHING = new Html('');

function markupOf(part: Part): string {
  if (part instanceof Html) return part.markup;
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return String(part);
  return part.map(({ markup }) => markup).join('');
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}
