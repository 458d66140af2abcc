import { parseArgs } from 'node:util';
import type { Carried } from '../archive/carried.ts';
import { CARRIED } from '../archive/carried.ts';
import type { OutFormat } from '../archive/out/formats.ts';
import { OUT_FORMATS } from '../archive/out/formats.ts';
import type { System } from '../units.ts';
import { LANGUAGES } from '../words/words.ts';
import { isLanguage } from './language.ts';
import type { Paper } from './pdf.ts';

/** What stands on the command line beside the command. */
export interface Options {
  readonly file: string;
  readonly system: System;
  readonly json: boolean;
  /** Against the recorded direction. */
  readonly reversed: boolean;
  /** Where to write; standard output where null. */
  readonly out: string | null;
  /** What `export` writes; null where none was named. */
  readonly format: OutFormat | null;
  /** What of people `export` writes. */
  readonly carried: Carried;
  /** Paper of a PDF; null for the page itself. */
  readonly pdf: Paper | null;
}

/** The options, or a sentence that says what is wrong with them. */
export function optionsFrom(args: readonly string[]): Options | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        imperial: { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
        reversed: { type: 'boolean', default: false },
        out: { type: 'string' },
        pdf: { type: 'boolean', default: false },
        letter: { type: 'boolean', default: false },
        gpx: { type: 'boolean', default: false },
        geojson: { type: 'boolean', default: false },
        kml: { type: 'boolean', default: false },
        language: { type: 'string', default: 'en' },
        with: { type: 'string', multiple: true, default: [] },
      },
    });
    if (positionals.length !== 1) return 'Name one file.';
    const formats = OUT_FORMATS.filter((format) => values[format]);
    if (formats.length > 1) return 'Name one format at a time.';
    const carried = Object.fromEntries(CARRIED.map((what) => [what, values.with.includes(what)]));
    const unknown = values.with.find((what) => !Object.hasOwn(carried, what));
    if (unknown !== undefined) return `Nothing is called "${unknown}"; there are ${CARRIED.join(', ')}.`;
    if (!isLanguage(values.language))
      return `There is no language "${values.language}"; there are ${Object.keys(LANGUAGES).join(', ')}.`;
    if (values.pdf && values.out === undefined) return 'Say where the PDF goes: --out FILE.';
    return {
      file: positionals[0],
      system: values.imperial ? 'imperial' : 'metric',
      json: values.json,
      reversed: values.reversed,
      out: values.out ?? null,
      format: formats[0] ?? null,
      carried: carried as unknown as Carried,
      pdf: !values.pdf ? null : values.letter ? 'Letter' : 'A4',
    };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
