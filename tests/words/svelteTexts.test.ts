import { readFileSync, readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { ownTexts } from './svelteTexts.ts';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

const files = readdirSync(SRC, { recursive: true, withFileTypes: true })
  .filter(({ name }) => name.endsWith('.svelte'))
  .map((entry) => `${entry.parentPath}/${entry.name}`);

test('no Svelte file has text of its own: every word comes from src/words', () => {
  expect(files.length).toBeGreaterThan(50);
  const faults = files.flatMap((file) =>
    ownTexts(readFileSync(file, 'utf8')).map(
      (text) => `${relative(SRC, file)} says “${text}” itself; it belongs into src/words.`,
    ),
  );
  expect(faults).toEqual([]);
});

describe('text of its own is found', () => {
  test.each([
    '<p>Looking …</p>',
    '{#if a}<p>yes</p>{:else}no{/if}',
    '{#each list as one}<li>{one} of them</li>{:else}none{/each}',
    '<button aria-label="Close">×</button>',
    '<input placeholder="Name {n}" />',
    '<FilePicker label="GPX file" />',
    "<p>{name || 'Unnamed'}</p>",
    "<p>{n === 1 ? 'one' : `${n} of them`}</p>",
    "<svg><title>{'Side ' + n}</title></svg>",
    '{#snippet words()}<b>hm</b>{/snippet}',
    '<svelte:head><title>Workbench</title></svelte:head>',
    '{#key id}<b>hm</b>{/key}',
  ])('%s', (source) => {
    expect(ownTexts(source)).not.toEqual([]);
  });

  test.each([
    '<h1>Rutline</h1>',
    '<p>{say.desks.scout} · {n} ±</p>',
    '<p class="soft small" role="status">{words}</p>',
    "{#if word === 'goes'}<b>›</b>{/if}",
    "<option value=\"left\">{kind === 'left' ? say.choice.left : ''}</option>",
    '<style>p { color: red; }</style>',
  ])('but not in %s', (source) => {
    expect(ownTexts(source)).toEqual([]);
  });
});
