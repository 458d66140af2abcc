/** One table of measurements. */
export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What a reader of the numbers has to know. */
  readonly notes: readonly string[];
}

/** A benchmark: measures, and answers tables one by one. */
export type Bench = () => AsyncIterable<Table>;
