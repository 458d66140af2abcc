import type { Obstacle } from '../src/terrain/obstacle.ts';

/** In each of the strings; what holds it anywhere but in text is a fault. */
export const MARK = 'injected';

/** What scripts would do, what requests would ask for, what elements would be called: all of it is looked for. */
export const ELSEWHERE = 'elsewhere.example';

const runs = `document.title='${MARK}'`;

/** Texts that try to be something else, by what they try to be. */
export const INJECTIONS: Readonly<Record<string, string>> = {
  script: `<script>${runs}</script>`,
  image: `<img src=x onerror="${runs}">`,
  'remote image': `<img src="https://${ELSEWHERE}/${MARK}.png">`,
  svg: `<svg onload="${runs}"><image href="https://${ELSEWHERE}/${MARK}.svg"/></svg>`,
  'end of a drawing': `</text></svg><svg onload="${runs}"><text>`,
  'foreign object': `<foreignObject><iframe srcdoc="<script>parent.${runs}</script>"></iframe></foreignObject>`,
  'broken attribute': `" autofocus onfocus="${runs}" x="`,
  'broken attribute, single': `' autofocus onfocus='${runs}' x='`,
  'end of an element': `</title></style></textarea></option></select><b id="${MARK}">`,
  address: `javascript:${runs}//`,
  'address in markup': `<a href="javascript:${runs}" id="${MARK}">x</a>`,
  base: `<base href="https://${ELSEWHERE}/"><link rel=stylesheet href="https://${ELSEWHERE}/${MARK}.css">`,
  template: `{${MARK}} {{7*7}} \${7*7} <%= 7 %> #{7} {@html '<b>'}`,
  style: `</style><style>*{background:url(https://${ELSEWHERE}/${MARK})}</style>;}*{color:red}`,
  formula: `=HYPERLINK("https://${ELSEWHERE}/${MARK}","x")`,
  'formula, at sign': `@SUM(1+1)*cmd|'/c ${MARK}'!A0`,
  entities: `&lt;b id=${MARK}&gt; &amp;amp; &#60;b&#62; &#x3C; &nbsp; &bogus; &`,
  'end of character data': `]]><b id="${MARK}"/><![CDATA[ ]]> <!-- --> --!> <?x ?>`,
  doctype: `<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]>&e; ${MARK}`,
  'other direction': `\u202E${MARK}\u202C \u2066x\u2069 \u200Fy`,
  'no width': `${MARK}\u200B\u200C\u200D\u2060\uFEFF\u00AD`,
  'half a character': `${MARK}\uD83D \uDE00`,
  controls: `${MARK}\u0001\u0008\u001B[31m\u007F\u0085\u2028\u2029`,
  nul: `${MARK}\u0000<b id=${MARK}>`,
  json: `","id":"${MARK}","geometry":null}],"x":[{"`,
  'closing html comment': `--><script>${runs}</script><!--`,
  'unquoted slash': `<img/src=x/onerror=${runs}>`,
  'names of objects': `__proto__ constructor ${MARK}`,
  path: `../../${MARK}\\..\\C:\\con.txt`,
  long: `${MARK} ${'<i>x</i>'.repeat(2000)}`,
};

/**
 * A text as it may come back out of XML: what XML 1.0 cannot hold (production 2) is `instead`, and readers may fold white
 * space, ends of lines of XML 1.1 included.
 */
export function asReadFromXml(text: string, instead: string): string {
  return text
    .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, instead)
    .replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, instead)
    .replace(/[\s\u0085]+/g, ' ')
    .trim();
}

/** An obstacle with one text in every place where a person can write one. */
export function obstacleSaying(obstacle: Obstacle, text: string): Obstacle {
  return {
    ...obstacle,
    name: text,
    note: text,
    preset: text,
    lines: obstacle.lines.map((line) => ({ ...line, name: text })),
    photos: obstacle.photos.map((photo) => ({ ...photo, caption: text })),
  };
}
