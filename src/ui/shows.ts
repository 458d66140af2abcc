/**
 * Shows a drawing, SVG text of our own with all words escaped, in an element. Of the next drawing only what differs is
 * written, as most of a picture stays while a hand moves; one that is made up of other parts takes its place as a whole.
 */
export function shows(element: HTMLElement, svg: string): { update(next: string): void } {
  /** Each from one `<` to the next: a tag and the words behind it. */
  let tags: readonly string[] = [];
  let parts: readonly Element[] = [];
  const update = (next: string) => {
    const before = tags;
    tags = next.split('<');
    if (!isAlike(before, tags)) {
      element.innerHTML = next;
      parts = [...element.querySelectorAll('*')];
      return;
    }
    let part = -1;
    tags.forEach((tag, i) => {
      if (isOpening(tag)) part++;
      if (tag !== before[i]) write(parts[part], before[i], tag);
    });
  };
  update(svg);
  return { update };
}

function isOpening(tag: string): boolean {
  return tag !== '' && !tag.startsWith('/');
}

/** Whether only values of attributes and words within a part differ. */
function isAlike(before: readonly string[], after: readonly string[]): boolean {
  return (
    before.length === after.length &&
    after.every((tag, i) => tag === before[i] || (isOpening(tag) && bare(tag) === bare(before[i])))
  );
}

/** A tag without what can be written anew: `text class="" x="">`. */
function bare(tag: string): string {
  return tag.slice(0, tag.indexOf('>') + 1).replace(/"[^"]*"/g, '""');
}

function write(part: Element, before: string, after: string): void {
  const [was, is] = [valuesOf(before), valuesOf(after)];
  for (const [name, value] of is) if (value !== was.get(name)) part.setAttribute(name, plain(value));
  const words = wordsOf(after);
  if (words !== wordsOf(before)) part.textContent = plain(words);
}

function valuesOf(tag: string): Map<string, string> {
  return new Map([...tag.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]));
}

function wordsOf(tag: string): string {
  return tag.slice(tag.indexOf('>') + 1);
}

const MARKS: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** What `escaped` made of a text, as it was. */
function plain(text: string): string {
  return text.replace(/&(?:amp|lt|gt|quot);/g, (mark) => MARKS[mark]);
}
