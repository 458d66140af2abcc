import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';

const documents = [
  'README.md',
  'DEVELOPERS.md',
  'data/README.md',
  ...readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('README.md'))
    .map((path) => join('src', path)),
];

/** What a document links to or shows, without addresses of the web. */
function linksIn(text: string): string[] {
  const prose = text.replace(/```[^]*?```/g, '').replace(/`[^`\n]*`/g, '');
  return [...prose.matchAll(/\]\(\s*<?([^)\s>]+)/g)]
    .map(([, link]) => link)
    .filter((link) => !/^[a-z]+:/.test(link));
}

/** The anchors that headings of a document make. */
function anchorsIn(text: string): string[] {
  return [...text.matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} _-]/gu, '')
      .replaceAll(' ', '-'),
  );
}

/** Links of a document that lead nowhere. */
function deadLinks(path: string, text: string): string[] {
  return linksIn(text).filter((link) => {
    const [file, anchor] = link.split('#');
    const target = file === '' ? path : join(dirname(path), decodeURIComponent(file));
    if (!existsSync(target)) return true;
    return anchor !== undefined && !anchorsIn(readFileSync(target, 'utf8')).includes(anchor);
  });
}

test.each(documents)('every link of %s leads somewhere', (path) => {
  expect(deadLinks(path, readFileSync(path, 'utf8'))).toEqual([]);
});

describe('a link that leads nowhere is found', () => {
  test.each([
    '[x](src/nowhere.ts)',
    '![x](public/none.png)',
    '[two\nlines](src/nowhere.ts)',
    '[x](#no-such-heading)',
    '[x](DEVELOPERS.md#no-such-heading)',
  ])('%s', (text) => {
    expect(deadLinks('README.md', text)).toHaveLength(1);
  });

  test('but not one into code, to the web, or to a heading that is there', () => {
    const text = '## On it\n`[x](a.ts)` [x](https://example.org) [x](LICENSE) [x](DEVELOPERS.md#3-words)';
    expect(deadLinks('README.md', text)).toEqual([]);
  });
});

test('the README says of every dependency why it is there', () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as Record<
    string,
    Record<string, string>
  >;
  const lines = readFileSync('README.md', 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('- **'));
  const named = lines.flatMap((line) => [...line.matchAll(/\*\*([^*]+)\*\*/g)].map(([, name]) => name));
  expect(named.sort()).toEqual(Object.keys({ ...dependencies, ...devDependencies }).sort());
});

test('the README runs and tests with scripts that exist', () => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
  const readme = readFileSync('README.md', 'utf8');
  const used = [...readme.matchAll(/npm (?:run )?(dev|test|cli)\b/g)].map(([, name]) => name);
  expect([...new Set(used)].sort()).toEqual(['cli', 'dev', 'test']);
  for (const name of used) expect(scripts).toHaveProperty(name);
});
