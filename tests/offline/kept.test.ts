import { expect, test } from 'vitest';
import { keptAddress } from '../../src/offline/kept.ts';

const FOLDER = 'https://club.example/tracks/rutline/';

test.each([
  [FOLDER, FOLDER],
  [`${FOLDER}#/brief`, FOLDER],
  [`${FOLDER}?from=home`, FOLDER],
  [`${FOLDER}index.html`, FOLDER],
  [`${FOLDER}index.html?x#/archive`, FOLDER],
  [`${FOLDER}demo/outing.json`, `${FOLDER}demo/outing.json`],
  [`${FOLDER}demo/index.html`, `${FOLDER}demo/index.html`],
])('%s finds its file', (url, address) => {
  expect(keptAddress(url, FOLDER)).toBe(address);
});

test.each([
  'https://elsewhere.example/tracks/rutline/',
  'https://club.example/tracks/',
  'https://club.example/tracks/rutline',
  'http://club.example/tracks/rutline/',
  'blob:https://club.example/8e5c',
])('%s is none of ours', (url) => {
  expect(keptAddress(url, FOLDER)).toBeNull();
});
