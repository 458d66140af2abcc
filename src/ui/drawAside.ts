import { acrossFrame, acrossSizes, acrossSvg } from '../draw/across.ts';
import { planFrame, planSizes, planSvg } from '../draw/plan.ts';
import { sideFrame, sideSizes, sideSvg } from '../draw/side.ts';
import type { SizeMark } from '../draw/sizes.ts';
import { stationOf } from '../draw/stood.ts';
import { stripSvg } from '../draw/strip.ts';
import { sweepSvg } from '../draw/sweep.ts';
import type { Sweep } from '../grade/sweep.ts';
import { DRIVER_ERROR_M } from '../traverse/limits.ts';
import type { Look, LookTask } from '../workers/bench.ts';
import { benchView } from './benchView.ts';
import { handlesOn, holdOf, isUpright, valueAt } from './handles.ts';
import { look } from './look.svelte.ts';

/** Sizes of pictures on a usual screen. */
const PX = { cut: 340, side: 680, sideHeight: 215, strip: 225, upright: 195, uprightHeight: 640 };

/** Draws every drawing of the workbench with its handles and throws all of it away. */
export function drawAside(looked: Look, task: LookTask, sweep: Sweep | null): void {
  const view = benchView(looked, task, null);
  if (view === null) return;
  const { system } = look;
  const { features } = view.stretch;
  const handles = (marks: readonly SizeMark[]) => {
    for (const handle of handlesOn(marks, features, 0)) {
      const [x, y] = handle.placeOf(handle.value);
      valueAt(handle, [x + 1, y + 1], system);
      holdOf(handle);
      isUpright(handle);
    }
  };
  for (const end of ['rear', 'front'] as const) {
    const cut = { ...view, end, system, widthPx: PX.cut };
    const frame = acrossFrame(cut);
    acrossSvg(cut, frame);
    handles(acrossSizes(cut, frame, 1));
  }
  const side = { ...view, sized: 0, system, widthPx: PX.side, mostPx: PX.sideHeight };
  sideSvg(side);
  handles(sideSizes(side, sideFrame(side), 1));
  stripSvg({ ...view, n: view.stood.n, system, widthPx: PX.side, heightPx: PX.strip });
  const plan = { ...view, sized: 0, system, widthPx: PX.upright, mostPx: PX.uprightHeight };
  const upright = planFrame(plan);
  planSvg(plan, upright);
  handles(planSizes(plan, upright, 1));
  if (sweep === null || sweep.offsetM.length === 0) return;
  sweepSvg({
    sweep,
    upright,
    offsetM: view.offsetM,
    stationM: stationOf(view.stood),
    errorM: DRIVER_ERROR_M,
    system,
    widthPx: PX.upright,
  });
}
