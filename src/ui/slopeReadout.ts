import type { Camber } from '../route/camber.ts';
import type { SlopeHere, SlopeProfile } from '../route/slope.ts';
import { slopeAt } from '../route/slope.ts';
import type { System } from '../units.ts';
import { degrees, percentText, shown, toShown, unitLabel, written } from '../units.ts';
import { say } from '../words/words.ts';

/** Slopes of less than this are called level. */
const LEVEL_RAD = 0.002;

/** What the long section says of a station, in parts that may wrap between. */
export interface Readout {
  readonly station: string;
  readonly elevation: string;
  /** Such as `climbs 15.7° ± 1.9°`. */
  readonly slope: string;
  /** The same in percent and as 1 in n, each with its range. */
  readonly otherWords: readonly string[];
}

/** The cross slope of the hillside, such as `hillside 12.0° ± 5.4° (21 %), left side high`. */
export function camberText({ camberRad, plusMinusRad }: Camber, system: System): string {
  const side = camberRad < 0 ? 'right' : 'left';
  const angle = (rad: number) => shown(rad, 'angle', system);
  const steep = Math.abs(camberRad);
  return say.trackModel.camber[side](angle(steep), `${angle(plusMinusRad)} (${percentText(steep)})`);
}

/** Such as `recorded 612 m`; nothing where it is not known. */
export function otherElevation(other: SlopeProfile, stationM: number, system: System): string[] {
  const { smoothedM } = slopeAt(other, stationM);
  if (Number.isNaN(smoothedM)) return [];
  return [say.trackModel.elevation[other.from](elevationText(smoothedM, system))];
}

function elevationText(elevationM: number, system: System): string {
  return `${Math.round(toShown(elevationM, 'length', system))} ${unitLabel('length', system)}`;
}

export function readoutOf(stationM: number, here: SlopeHere, system: System): Readout {
  const station = shown(stationM, 'distance', system);
  if (Number.isNaN(here.smoothedM))
    return {
      station,
      elevation: say.track.elevationNotKnown,
      slope: say.track.slopeNotKnown,
      otherWords: [],
    };
  const elevation = elevationText(here.smoothedM, system);
  const { slopeRad, plusMinusRad } = here;
  const steep = Math.abs(slopeRad);
  const way = steep < LEVEL_RAD ? say.track.level : slopeRad > 0 ? say.track.climbs : say.track.falls;
  const slope = `${way} ${written(degrees(steep).toFixed(1))}° ± ${written(degrees(plusMinusRad).toFixed(1))}°`;
  return {
    station,
    elevation,
    slope,
    otherWords: [percent(steep, plusMinusRad), oneIn(steep, plusMinusRad)],
  };
}

/** As `28 % (24 to 32)`; a range that reaches past level says so by a minus. */
function percent(steep: number, plusMinus: number): string {
  const of = (rad: number) => (100 * Math.tan(rad)).toFixed(0).replace('-', '−').replace('−0', '0');
  return `${of(steep)} % (${say.track.to(of(steep - plusMinus), of(steep + plusMinus))})`;
}

/** As `1 in 3.6 (3.1 to 4.1)`, or how steep at most where it may as well be level. */
function oneIn(steep: number, plusMinus: number): string {
  const of = (rad: number) => {
    const run = 1 / Math.tan(rad);
    return written(run < 9.95 ? run.toFixed(1) : run.toFixed(0));
  };
  const most = of(steep + plusMinus);
  if (steep - plusMinus < LEVEL_RAD) return say.track.oneInAtMost(most);
  return `${say.track.oneIn(of(steep))} (${say.track.to(most, of(steep - plusMinus))})`;
}
