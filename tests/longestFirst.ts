import type { TestSpecification } from 'vitest/node';
import { BaseSequencer } from 'vitest/node';

/** The file that keeps one core busy for longest; begun late, it would leave the other one idle. */
const LONGEST = 'tests/traverse/truth/engine.test.ts';

/** As the runner orders them, but what takes longest is begun first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLongest = ({ moduleId }: TestSpecification) => moduleId.endsWith(LONGEST);
    return [...sorted.filter(isLongest), ...sorted.filter((file) => !isLongest(file))];
  }
}
