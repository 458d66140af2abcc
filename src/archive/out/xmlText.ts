/** What XML 1.0 (5th ed., 2008, production 2) does not let stand in a document, halves of surrogate pairs included. */
const FORBIDDEN =
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** Text as it stands between tags or in an attribute; what cannot stand there becomes U+FFFD. */
export function xmlText(text: string): string {
  return text.replace(FORBIDDEN, '\uFFFD').replace(/[&<>"'\r]/g, (c) => `&#${c.charCodeAt(0)};`);
}

/** An element with text in it, or nothing where there is no text. */
export function xmlElement(name: string, text: string): string {
  return text === '' ? '' : `<${name}>${xmlText(text)}</${name}>`;
}

/** A number as xsd:decimal (XML Schema Part 2, 2nd ed., 2004, 3.2.3), which has no exponent; nothing is rounded. */
export function decimalText(value: number): string {
  const [, sign, whole, fraction = '', exponent] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value)) ?? [];
  if (exponent === undefined) return String(value);
  const digits = whole + fraction;
  const point = whole.length + Number(exponent);
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`;
  return sign + digits.padEnd(point, '0');
}
