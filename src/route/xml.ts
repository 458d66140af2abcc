import { SaxesParser } from 'saxes';
import type { Fault, FaultList } from './faults.ts';
import { FAULTS, Stop } from './faults.ts';
import type { ReadLimits } from './limits.ts';
import { BARE_AMPERSAND, Mender } from './mend.ts';
import { PLAIN_LENGTH, PlainPoints } from './plain.ts';

/** What is heard of a document. Names come without their namespace prefix. */
export interface XmlListener {
  open(name: string, attributes: Readonly<Record<string, string>>): boolean;
  /** May come in several pieces. `BARE_AMPERSAND` stands for an `&` that was written bare. */
  text(text: string): void;
  close(): boolean;
  /** Whether the next thing to come is likely to be a point of a track. */
  readonly awaitsPoint: boolean;
}

/** The state of saxes 6.0.0 between two tags; it keeps it to itself. */
function stateOf(parser: SaxesParser): unknown {
  return (parser as unknown as { state: unknown }).state;
}

const BETWEEN_TAGS = stateOf(new SaxesParser().write('<a> '));

/**
 * The XML parser, guarded: bare `&` and forbidden characters are mended first, prefixes are stripped rather than
 * resolved (an undeclared one costs nothing, deep nesting no quadratic time), document types are refused, depth
 * and the length of any one value are bounded, and violations of XML become faults.
 */
export class Xml {
  readonly #parser = new SaxesParser({ position: false });
  readonly #mender: Mender;
  readonly #limits: ReadLimits;
  readonly #faults: FaultList;
  #depth = 0;
  #sawRoot = false;
  #heard = false;
  #unheardLength = 0;
  #errors = 0;
  readonly #listener: XmlListener;
  readonly #plain: PlainPoints;
  /** The beginning of what may be a plain point. */
  #held = '';

  constructor(listener: XmlListener, limits: ReadLimits, faults: FaultList) {
    this.#limits = limits;
    this.#faults = faults;
    this.#mender = new Mender(faults);
    this.#listener = listener;
    this.#plain = new PlainPoints(listener);
    const parser = this.#parser;
    const hear = (text: string) => listener.text(text);
    parser.on('opentag', ({ name, attributes }) => {
      this.#sawRoot = true;
      if (++this.#depth > limits.depth) throw new Stop(FAULTS.tooDeep, limits.depth);
      if (listener.open(name, attributes as Record<string, string>)) parser.on('text', hear);
    });
    parser.on('cdata', (text) => {
      this.#heard = true;
      listener.text(text.replaceAll(BARE_AMPERSAND, '&'));
    });
    parser.on('closetag', () => {
      this.#heard = true;
      this.#depth--;
      if (listener.close()) parser.off('text');
    });
    parser.on('comment', () => (this.#heard = true));
    parser.on('doctype', (doctype) => {
      throw new Stop(/^\s*html\b/i.test(doctype) ? FAULTS.webPage : FAULTS.doctype);
    });
    parser.on('error', ({ message }) => this.#violation(message));
  }

  /** The line being read, from 1. */
  get line(): number {
    return this.#parser.line + this.#plain.lines;
  }

  push(text: string): void {
    this.#read(this.#mender.mended(text, this.#lineAhead, false));
  }

  end(): void {
    this.#read(this.#mender.mended('', this.#lineAhead, true));
    this.#write(this.#held);
    if (!this.#sawRoot) throw new Stop(FAULTS.notXml);
    if (this.#depth > 0) throw new Stop(FAULTS.truncated);
    this.#parser.close();
  }

  /** The line where the next text begins. */
  get #lineAhead(): number {
    return this.line + this.#held.split('\n').length - 1;
  }

  /** Plain points are read beside the parser, which is given all else, and stands still between them. */
  #read(text: string): void {
    let rest = this.#held + text;
    this.#held = '';
    while (rest !== '') {
      if (this.#listener.awaitsPoint && stateOf(this.#parser) === BETWEEN_TAGS) {
        const end = this.#plain.read(rest);
        if (end > 0) this.#unheardLength = 0;
        rest = rest.slice(end);
        if (rest.length < PLAIN_LENGTH && !rest.includes('</trkpt>')) {
          this.#held = rest;
          return;
        }
      }
      const next = rest.lastIndexOf('<trkpt');
      const upTo = next > 0 ? next : rest.length;
      this.#write(rest.slice(0, upTo));
      rest = rest.slice(upTo);
    }
  }

  /** The parser joins a value in memory until it ends, and says nothing till then. */
  #write(text: string): void {
    this.#heard = false;
    this.#parser.write(text);
    this.#unheardLength = this.#heard ? 0 : this.#unheardLength + text.length;
    const { valueLength } = this.#limits;
    if (this.#unheardLength <= valueLength) return;
    throw this.#sawRoot ? new Stop(FAULTS.tooLong, valueLength) : new Stop(FAULTS.notXml);
  }

  #violation(message: string): void {
    if (++this.#errors > this.#limits.xmlErrors) throw new Stop(FAULTS.tooBroken, this.#limits.xmlErrors);
    const fault = faultFor(message, this.#sawRoot);
    if (fault === FAULTS.strayClosingTag || fault === FAULTS.doctype) throw new Stop(fault);
    this.#faults.add(fault, this.line, '', message.replace(/\.$/, ''));
  }
}

/** Translates the messages of saxes 6.0.0. */
function faultFor(message: string, sawRoot: boolean): Fault {
  if (message === 'unexpected close tag.') return FAULTS.crossedTags;
  if (message.startsWith('unmatched closing tag')) return FAULTS.strayClosingTag;
  if (message.includes('doctype')) return FAULTS.doctype;
  if (message === 'documents may contain only one root.') return FAULTS.secondRoot;
  if (message === 'text data outside of root node.')
    return sawRoot ? FAULTS.textAfterRoot : FAULTS.textBeforeRoot;
  if (/entity/.test(message)) return FAULTS.unknownEntity;
  if (/XML declaration/i.test(message)) return FAULTS.lateDeclaration;
  return FAULTS.malformed;
}
