import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getuid } from 'node:process';

/** Held by whoever installs: several test files may need a package at once, and apt-get serves one at a time. */
const LOCK = join(tmpdir(), 'rutline-tests-apt.lock');

/**
 * Whether a tool is there: if need be out of packages of Debian, which only root may install. What they recommend is left
 * out; name it where it is needed.
 */
export function isThere(tool: string, ...packages: readonly string[]): boolean {
  const look = () => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;
  if (look()) return true;
  if (getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return false;
  const install = `apt-get update && apt-get install -y --no-install-recommends ${packages.join(' ')}`;
  spawnSync('flock', [LOCK, 'sh', '-c', `command -v ${tool} || { ${install}; }`], { stdio: 'ignore' });
  return look();
}
