import { parted, widestWord } from './wordWidth.ts';

/** Of paper between its margins, as A4 and Letter both leave it, in the size of the matrix's font; and of a cell's frame. */
const PAGE_EM = 51;
const FRAME_EM = 0.75;

/** Below these a column reads as a list of single words. */
const LEAST_NAME_EM = 7;
const LEAST_VEHICLE_EM = 5.5;

/** One table of the matrix: which vehicles it holds, and its columns' shares of the page, that of the obstacles first. */
export interface MatrixPart {
  /** From the first of these, up to but not with the second. */
  readonly from: number;
  readonly to: number;
  readonly shares: readonly number[];
}

/** All that stands in one column. */
export interface ColumnTexts {
  readonly bold: readonly string[];
  readonly regular: readonly string[];
}

/** Room of one column: `need` with long words parted, `want` with all of them whole; `letters` of its longest text. */
interface Room {
  readonly need: number;
  readonly want: number;
  readonly letters: number;
}

/**
 * The fewest tables that hold all vehicles at full size of print with no word broken, of the same number of vehicles each
 * but for one; `names` stand in the first column, `vehicles` in that of each vehicle.
 */
export function matrixParts(names: ColumnTexts, vehicles: readonly ColumnTexts[]): readonly MatrixPart[] {
  const first = roomOf(names, LEAST_NAME_EM);
  const rooms = vehicles.map((texts) => roomOf(texts, LEAST_VEHICLE_EM));
  for (let tables = 1; ; tables++) {
    const starts = Array.from({ length: tables + 1 }, (_, t) => Math.round((t * rooms.length) / tables));
    const parts = starts.slice(1).map((to, t) => ({ from: starts[t], to }));
    const columns = parts.map(({ from, to }) => [first, ...rooms.slice(from, to)]);
    if (tables >= rooms.length || columns.every((some) => sum(some, 'need') <= PAGE_EM))
      return parts.map((part, t) => ({ ...part, shares: sharesOf(columns[t]) }));
  }
}

function roomOf({ bold, regular }: ColumnTexts, least: number): Room {
  const widest = (as: (text: string) => string) =>
    Math.max(
      least,
      ...bold.map((text) => FRAME_EM + widestWord(as(text), 'bold')),
      ...regular.map((text) => FRAME_EM + widestWord(as(text), 'regular')),
    );
  const letters = Math.max(1, ...[...bold, ...regular].map(({ length }) => length));
  return { need: widest(parted), want: widest((text) => text), letters };
}

/** What each column needs; then whole words, as far as there is room; what is left over goes where the texts are long. */
function sharesOf(columns: readonly Room[]): number[] {
  const need = sum(columns, 'need');
  const wish = sum(columns, 'want') - need;
  const spare = Math.max(0, PAGE_EM - need);
  const granted = wish > spare ? spare / wish : 1;
  const left = wish > spare ? 0 : (spare - wish) / sum(columns, 'letters');
  const widths = columns.map((room) => room.need + granted * (room.want - room.need) + left * room.letters);
  const all = widths.reduce((total, width) => total + width, 0);
  return widths.map((width) => width / all);
}

function sum(rooms: readonly Room[], which: keyof Room): number {
  return rooms.reduce((total, room) => total + room[which], 0);
}
