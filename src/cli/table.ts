/** A column of a table on a terminal. */
export interface Column<T> {
  readonly head: string;
  readonly cell: (row: T) => string;
  /** Numbers stand to the right. */
  readonly right?: boolean;
}

/** Rows as aligned text with one line of heads. */
export function tableText<T>(columns: readonly Column<T>[], rows: readonly T[]): string {
  const texts = [columns.map(({ head }) => head), ...rows.map((row) => columns.map(({ cell }) => cell(row)))];
  const widths = columns.map((_, c) => Math.max(...texts.map((row) => [...row[c]].length)));
  return texts
    .map((row) => row.map((text, c) => padded(text, widths[c], columns[c].right ?? false)).join('  '))
    .map((line) => line.trimEnd())
    .join('\n');
}

function padded(text: string, width: number, right: boolean): string {
  const space = ' '.repeat(width - [...text].length);
  return right ? space + text : text + space;
}
