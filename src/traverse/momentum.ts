import type { Effort } from './effort.ts';
import { CREST_M, STEEPEST_RUN } from './limits.ts';
import { G_MPS2 } from './gravity.ts';
import type { TraverseRecord } from './record.ts';
import type { Up } from './up.ts';

/**
 * Least speed on entry that carries the vehicle over every stretch where grip or engine lack: ½ m v² = ∫ lacking ds. A
 * stretch ends when nothing has lacked for a wheelbase; what the engine has to spare within it is not counted. Infinity
 * where push lacks with a wheel against a step: that is a blow, not a climb.
 */
export function entrySpeedMps(effort: Effort, record: TraverseRecord, wheelbaseM: number): number {
  let most = 0;
  let lackM = 0;
  let sinceM = 0;
  for (let n = 0; n < effort.length; n++) {
    const stepM = n === 0 ? 0 : record.stationM[n] - record.stationM[n - 1];
    const lack = effort.ask[n] - effort.push[n];
    if (lack > 0 && steepest(record, n) > STEEPEST_RUN) return Infinity;
    sinceM = lack > 0 ? 0 : sinceM + stepM;
    if (sinceM > wheelbaseM) lackM = 0;
    lackM += Math.max(0, lack) * stepM;
    most = Math.max(most, lackM);
  }
  return Math.sqrt(2 * G_MPS2 * most);
}

/** The steepest climb under a wheel that bears load, tangent. */
function steepest(record: TraverseRecord, n: number): number {
  let most = -Infinity;
  for (let i = 4 * n; i < 4 * n + 4; i++) if (record.loadN[i] > 0) most = Math.max(most, record.climbTan[i]);
  return most;
}

/**
 * Speed at which the ground would fall away faster than a wheel can follow: over a crest of curvature κ the wheel follows
 * while v² κ ≤ g u_z. Curvature is taken over half a wheelbase, which the springs and the body follow as a whole.
 */
export function liftSpeedMps(record: TraverseRecord, up: Up): number {
  const stepM = record.stationM[1] - record.stationM[0];
  const reach = Math.max(1, Math.round(CREST_M / 2 / stepM));
  const span = reach * stepM;
  let most = 0;
  for (let n = reach; n + reach < record.length; n++)
    for (let i = 0; i < 4; i++) {
      const z = record.bottomM;
      const bend = 2 * z[4 * n + i] - z[4 * (n - reach) + i] - z[4 * (n + reach) + i];
      most = Math.max(most, bend / (span * span));
    }
  return Math.sqrt((G_MPS2 * up.z) / Math.max(most, 1e-6));
}
