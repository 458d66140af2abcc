import { spawnSync } from 'node:child_process';
import { delivered } from '../src/build/licences.ts';

/** What `npm audit --json` finds, as far as it is used here. */
interface Report {
  readonly vulnerabilities?: Readonly<Record<string, { readonly severity: string; readonly range?: string }>>;
}

/**
 * What is known to be wrong with packages that are delivered, at severity high or worse, as sentences; null where the
 * registry was not asked or does not answer such questions.
 */
export function auditFaults(json: string, names: ReadonlySet<string>): string[] | null {
  let report: Report;
  try {
    report = JSON.parse(json) as Report;
  } catch {
    return null;
  }
  if (report.vulnerabilities === undefined) return null;
  return Object.entries(report.vulnerabilities)
    .filter(([name, { severity }]) => names.has(name) && ['high', 'critical'].includes(severity))
    .map(([name, { severity, range }]) => `${name} ${range ?? ''}: ${severity}`);
}

if (process.argv[1]?.endsWith('audit.ts')) {
  const { stdout } = spawnSync('npm', ['audit', '--json', '--fetch-retries=0', '--fetch-timeout=20000'], {
    encoding: 'utf8',
  });
  const faults = auditFaults(stdout, new Set(delivered('.').map(({ name }) => name)));
  console.log(
    faults === null
      ? 'The registry could not be asked what is known of the dependencies.'
      : faults.join('\n') || 'Nothing grave is known of what is delivered.',
  );
  process.exitCode = faults === null || faults.length === 0 ? 0 : 1;
}
