import type { Stood } from '../draw/stood.ts';
import type { RungVerdict } from '../grade/verdict.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import { asTravelled } from '../terrain/travelled.ts';
import type { Along } from '../traverse/along.ts';
import { nearestStation } from '../traverse/along.ts';
import type { Check, CheckName } from '../traverse/assess.ts';
import { limiting } from '../traverse/assess.ts';
import { clearanceOf } from '../traverse/checks.ts';
import type { RungName } from '../vehicle/aids.ts';
import { PARTS } from '../vehicle/body.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Look, LookTask } from '../workers/bench.ts';

/** What all drawings of the workbench share: the vehicle at its station on the ground as travelled. */
export interface BenchView {
  readonly stretch: Stretch;
  readonly slopeRad: number;
  readonly offsetM: number;
  readonly along: Along;
  readonly stood: Stood;
  readonly other: Stood | null;
  readonly rungs: readonly RungName[];
  readonly looked: number;
  /** All that is checked with the rung that is looked at, at the values as entered. */
  readonly checks: readonly Check[];
}

/** Null where nothing could be taken along the line. `movedToM` null: where it is nearest to a limit. */
export function benchView(look: Look, { on, other }: LookTask, movedToM: number | null): BenchView | null {
  const { along } = look;
  if (along === null) return null;
  const stationM = movedToM ?? tellingM(look.verdict.ladder[look.rung], along);
  const n = nearestStation(along.record, stationM);
  return {
    stretch: asTravelled(on.stretch, on.direction),
    slopeRad: look.slopeRad,
    offsetM: on.offsetM,
    along,
    stood: { values: on.vehicle.values, along, n },
    other:
      look.other === null || other === null
        ? null
        : {
            values: other.values,
            along: look.other,
            n: nearestStation(look.other.record, along.record.stationM[n]),
          },
    rungs: ladder(on.vehicle.values).map(({ name }) => name),
    looked: look.rung,
    checks: look.verdict.ladder[look.rung].checks,
  };
}

/** Where the deciding check is worst; where it has no place, as the room has none, where the next nearest limit is. */
function tellingM({ limit }: RungVerdict, along: Along): number {
  const placed = along.limits.filter(({ stationM }) => Number.isFinite(stationM));
  const telling = limit !== null && Number.isFinite(limit.stationM) ? limit : null;
  if (telling === null && placed.length === 0) return 0;
  const { name, stationM } = telling ?? limiting(placed);
  return leastGapAtM(name, along) ?? stationM;
}

/** What the underside comes nearest to has a place of its own on the ground: here the vehicle stands when it does. */
function leastGapAtM(name: CheckName, { gapM, record }: Along): number | null {
  const parts = PARTS.flatMap((part, p) => (clearanceOf(part) === name ? [p] : []));
  let at: number | null = null;
  let least = Infinity;
  for (let n = 0; n < record.length; n++)
    for (const p of parts) {
      if (!(gapM[PARTS.length * n + p] < least)) continue;
      least = gapM[PARTS.length * n + p];
      at = record.stationM[n];
    }
  return at;
}
