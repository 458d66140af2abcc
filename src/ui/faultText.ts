import { featureWords } from '../brief/featureText.ts';
import type { Problem } from '../problem.ts';
import { checkObstacle } from '../terrain/check.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';

/** What contradicts itself at an obstacle, each with the line and the shape that it is about, for the person who measured. */
export function obstacleFaults(obstacle: Obstacle, system: System): string[] {
  return checkObstacle(obstacle, '').map((problem) =>
    [placeOf(problem, obstacle, system), problem.what, problem.done].filter(Boolean).join(' '),
  );
}

function placeOf({ where }: Problem, obstacle: Obstacle, system: System): string {
  const line = obstacle.lines[Number(/lines\[(\d+)\]/.exec(where)?.[1] ?? 0)];
  const feature = stretchOf(obstacle, line).features[Number(/features\[(\d+)\]/.exec(where)?.[1] ?? -1)];
  const names = [line.kind === 'bypass' ? line.name : '', feature ? featureWords(feature, system) : ''];
  const place = names.filter(Boolean).join(', ');
  return place === '' ? '' : `${place}:`;
}
