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
    after.every((tag, i) => tag === before[i] || (isOpening(tag) && isSamePart(before[i], tag)))
  );
}

/** Whether two tags are alike but for what can be written anew. */
function isSamePart(before: string, after: string): boolean {
  const [was, is] = [before.split('"'), after.split('"')];
  const last = is.length - 1;
  if (was.length !== is.length || endOf(was[last]) !== endOf(is[last])) return false;
  for (let i = 0; i < last; i += 2) if (was[i] !== is[i]) return false;
  return true;
}

/** Split at its quotation marks a tag is the text before a value, the value, and so on; the words come last of all. */
function write(part: Element, before: string, after: string): void {
  const [was, is] = [before.split('"'), after.split('"')];
  const last = is.length - 1;
  for (let i = 1; i < last; i += 2) if (is[i] !== was[i]) part.setAttribute(nameOf(is[i - 1]), plain(is[i]));
  const words = wordsOf(is[last]);
  if (words !== wordsOf(was[last])) part.textContent = plain(words);
}

/** Of ` x=` or `text class=`, the name. */
function nameOf(before: string): string {
  return before.slice(before.lastIndexOf(' ') + 1, -1);
}

function endOf(rest: string): string {
  return rest.slice(0, rest.indexOf('>') + 1);
}

function wordsOf(rest: string): string {
  return rest.slice(rest.indexOf('>') + 1);
}

const MARKS: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** What `escaped` made of a text, as it was. */
function plain(text: string): string {
  return text.replace(/&(?:amp|lt|gt|quot);/g, (mark) => MARKS[mark]);
}
