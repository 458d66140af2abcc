import type { Stood } from '../draw/stood.ts';
import type { RungVerdict } from '../grade/verdict.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import { asTravelled } from '../terrain/travelled.ts';
import type { Along } from '../traverse/along.ts';
import { nearestStation } from '../traverse/along.ts';
import { limiting } from '../traverse/assess.ts';
import type { RungName } from '../vehicle/aids.ts';
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
  };
}

/** Where the deciding check is worst; where it has no place, as the room has none, where the next nearest limit is. */
function tellingM({ limit }: RungVerdict, { limits }: Along): number {
  if (limit !== null && Number.isFinite(limit.stationM)) return limit.stationM;
  const placed = limits.filter(({ stationM }) => Number.isFinite(stationM));
  return placed.length === 0 ? 0 : limiting(placed).stationM;
}
