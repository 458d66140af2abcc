/** An element of GPX that means something to us, with the elements we know directly inside it. */
export interface Element {
  readonly name: string;
  readonly children: readonly Element[];
  /** `number`: the text directly inside. `text`: that and the text of elements inside it. */
  readonly value: 'none' | 'number' | 'text';
}

function parent(name: string, ...children: Element[]): Element {
  return { name, children, value: 'none' };
}

function value(name: string, kind: 'number' | 'text'): Element {
  return { name, children: [], value: kind };
}

/** Stands for any element that we do not know, and for all it holds. */
export const OTHER = parent('');

export const ELE = value('ele', 'number');
export const TIME = value('time', 'number');
export const NAME = value('name', 'text');
export const DESC = value('desc', 'text');
export const CMT = value('cmt', 'text');

export const TRKPT = parent('trkpt', ELE, TIME);
export const TRKSEG = parent('trkseg', TRKPT);
export const TRK = parent('trk', NAME, DESC, CMT, TRKSEG);
export const RTEPT = parent('rtept', ELE, TIME);
export const RTE = parent('rte', NAME, DESC, CMT, RTEPT);
export const WPT = parent('wpt', NAME, DESC, CMT, ELE);
export const METADATA = parent('metadata', NAME);

/** GPX 1.1 keeps the name of the file in `metadata`, GPX 1.0 directly in the root. */
export const GPX = parent('gpx', METADATA, NAME, WPT, RTE, TRK);

/** Where a file begins. */
export const DOCUMENT = parent('', GPX);
