import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { delivered, isAllowed, licencesText } from '../../src/build/licences.ts';

const packages = delivered('.');

describe('what is delivered', () => {
  test('holds every runtime dependency, and theirs', () => {
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      dependencies: Record<string, string>;
    };
    const names = packages.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining([...Object.keys(dependencies), 'svelte', 'xmlchars']));
    const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
      packages: Record<string, { dev?: boolean; optional?: boolean; peer?: boolean }>;
    };
    const locked = Object.entries(lock.packages).filter(
      ([path, { dev, optional, peer }]) => path !== '' && !dev && !optional && !peer,
    );
    const there = new Set(packages.map(({ folder }) => folder));
    expect(locked.map(([path]) => path).filter((path) => !there.has(path))).toEqual([]);
  });

  test('is all under licences that ask no more than to be told', () => {
    expect(packages.filter(({ licence }) => !isAllowed(licence))).toEqual([]);
  });

  test('is named in one text with its licences', () => {
    const text = licencesText(packages);
    for (const { name, version } of packages) expect(text).toContain(`${name} ${version} (`);
    expect(text).toContain('Permission is hereby granted, free of charge');
    expect(text).toContain('SIL OPEN FONT LICENSE');
    expect(text.length).toBeLessThan(300_000);
  });
});

test.each([
  ['MIT', true],
  ['(MIT OR GPL-3.0-only)', true],
  ['(MIT AND Zlib)', true],
  ['MIT AND GPL-3.0-only', false],
  ['GPL-3.0-only', false],
  ['AGPL-3.0-or-later', false],
  ['SEE LICENSE IN LICENSE.md', false],
  ['', false],
])('%j is allowed: %s', (licence, allowed) => {
  expect(isAllowed(licence)).toBe(allowed);
});
