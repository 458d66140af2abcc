import type { Place } from '../convoy/matrix.ts';
import type { ObstacleGrade } from '../grade/rating.ts';
import { gradeBySizes } from '../grade/rating.ts';
import type { Direction } from '../terrain/obstacle.ts';
import { gradesInWorkers, gradesKnown } from '../workers/grade.ts';
import { look } from './look.svelte.ts';

export const BOTH_WAYS: readonly Direction[] = ['as recorded', 'reversed'];

/** Nothing is asked while a size is still being typed or dragged, milliseconds. */
const REST_MS = 300;

/** The grades of some places both ways: by sizes at once, with the vehicles as soon as they have come. */
export class Grades {
  readonly #placesNow: () => readonly Place[];
  #came = $state.raw<{ readonly key: object; readonly both: readonly (readonly ObstacleGrade[])[] } | null>(
    null,
  );
  readonly #asked = $derived.by(() => ({
    places: this.#placesNow(),
    season: look.season,
    classification: look.classification,
  }));
  readonly #bySizes = $derived.by(() => {
    const { places, season, classification } = this.#asked;
    return places.map((place) => gradeBySizes(place, season, classification));
  });

  constructor(placesNow: () => readonly Place[]) {
    this.#placesNow = placesNow;
  }

  /** Whether the vehicles have not all been taken over it yet. */
  get working(): boolean {
    return this.#came?.key !== this.#asked;
  }

  /** In the order of the places. */
  of(direction: Direction): readonly ObstacleGrade[] {
    if (this.#came === null || this.working) return this.#bySizes;
    return this.#came.both[BOTH_WAYS.indexOf(direction)];
  }

  /** Asks for the places as they are; returns what cancels it. */
  ask(): () => void {
    const key = this.#asked;
    const { places, season, classification } = key;
    const known = BOTH_WAYS.map((way) => gradesKnown(places, way, season, classification));
    if (known.every((grades) => grades !== null)) {
      this.#came = { key, both: known };
      return () => undefined;
    }
    const stopper = new AbortController();
    const ask = async () => {
      const both = await Promise.all(
        BOTH_WAYS.map((way) => gradesInWorkers(places, way, season, classification, stopper.signal)),
      );
      if (both.every((grades) => grades !== null)) this.#came = { key, both };
    };
    // Where no worker answers, the grade by sizes stays, and says that the vehicles are missing.
    const failed = () => {
      if (!stopper.signal.aborted) this.#came = { key, both: BOTH_WAYS.map(() => this.#bySizes) };
    };
    const rest = setTimeout(() => void ask().catch(failed), REST_MS);
    return () => {
      clearTimeout(rest);
      stopper.abort();
    };
  }
}
