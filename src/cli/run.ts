import { writeFile } from 'node:fs/promises';
import { problemText } from '../problem.ts';
import { LANGUAGES } from '../words/words.ts';
import { brief } from './brief.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { exportTrip } from './export.ts';
import { host, HOST_USAGE } from './host.ts';
import { optionsFrom } from './options.ts';
import { publish, PUBLISH_USAGE } from './publish.ts';
import { slopes } from './slopes.ts';
import { verdicts } from './verdicts.ts';

const COMMANDS: Readonly<Record<string, Command>> = {
  slopes,
  verdicts,
  brief,
  export: exportTrip,
  check,
};

const USAGE = [
  'npm run cli -- COMMAND FILE [--imperial] [--json] [--reversed] [--out FILE]',
  '',
  ...Object.values(COMMANDS).map(({ usage, sentence }) => `  ${usage.padEnd(22)}${sentence}`),
  '',
  '  --imperial            feet, pounds, psi',
  '  --json                for other programs: SI units, angles in radians, unknown as null',
  '  --reversed            against the recorded direction',
  '  --out FILE            write there instead of here',
  '  --pdf [--letter]      brief: printed by a browser that is at hand, on A4 or Letter',
  `  --language ${Object.keys(LANGUAGES).join('|').padEnd(11)}brief: what the sheet and the cards are written in`,
  '  --gpx --geojson --kml export: GPX 1.1, RFC 7946, KML 2.2',
  '  --with WHAT           export: notes or times of people along with the ground; may be said twice',
  '',
  ...HOST_USAGE,
  ...PUBLISH_USAGE,
  '',
  'Problems go to standard error. The exit code is 0 where nothing was wrong or only doubtful, 1 where part of the',
  'file could not be used, 2 where the command itself was wrong.',
].join('\n');

/** Runs one command; answers the exit code. */
export async function run([name, ...rest]: readonly string[]): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help') {
    console.log(USAGE);
    return name === undefined ? 2 : 0;
  }
  if (name === 'host') return host(rest);
  if (name === 'publish') return publish(rest);
  if (!Object.hasOwn(COMMANDS, name)) return wrong(`There is no command "${name}".`);
  const options = optionsFrom(rest);
  if (typeof options === 'string') return wrong(options);

  const { text, bytes, json, problems } = await COMMANDS[name].run(options);
  const body = options.json ? JSON.stringify({ answer: json, problems }, null, 2) : text;
  const content = bytes !== undefined && !options.json ? bytes : `${body}\n`;
  for (const problem of problems) console.error(problemText(problem));
  if (options.out === null && body !== '') console.log(body);
  if (options.out !== null && body !== '') {
    try {
      await writeFile(options.out, content);
    } catch (error) {
      console.error(`${options.out} cannot be written: ${String(error)}`);
      return 1;
    }
  }
  return problems.some(({ severity }) => severity === 'error') ? 1 : 0;
}

function wrong(sentence: string): number {
  console.error(`${sentence}\n\n${USAGE}`);
  return 2;
}
