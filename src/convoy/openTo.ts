import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Cell } from './matrix.ts';

/** Of a convoy, who goes by itself on one line, without a run or a pull. */
export interface OpenTo {
  /** Least and greatest track width of those that go; null where none does. */
  readonly trackWidthM: { readonly least: number; readonly greatest: number } | null;
  /** Those of a width between the two that do not go all the same, in convoy order: the range is not open to them. */
  readonly shutTo: readonly Vehicle[];
}

/** The wider of front and rear: the track that the ground must have room for. */
export function trackWidthOf({ values }: Vehicle): number {
  return Math.max(values.frontTrackWidthM, values.rearTrackWidthM);
}

/**
 * To whom of `vehicles` a line of an obstacle is open; `cells` are those of the obstacle that are known so far. Null
 * while a verdict is missing, and where it is not known of anyone that does go while others are not known.
 */
export function openTo(lineId: string, vehicles: readonly Vehicle[], cells: readonly Cell[]): OpenTo | null {
  const words = vehicles.map(
    ({ id }) =>
      cells.find(({ vehicleId }) => vehicleId === id)?.verdicts.find((one) => one.lineId === lineId)?.verdict
        .word,
  );
  if (vehicles.length === 0 || words.includes(undefined)) return null;
  const goes = vehicles.filter((_, i) => words[i] === 'goes' || words[i] === 'goes with care');
  if (goes.length === 0) return words.includes('not known') ? null : { trackWidthM: null, shutTo: [] };
  const widths = goes.map(trackWidthOf);
  const [least, greatest] = [Math.min(...widths), Math.max(...widths)];
  const shutTo = vehicles.filter((vehicle) => {
    const widthM = trackWidthOf(vehicle);
    return !goes.includes(vehicle) && widthM >= least && widthM <= greatest;
  });
  return { trackWidthM: { least, greatest }, shutTo };
}
