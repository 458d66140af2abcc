import type { Plugin } from 'vite';

const NOTHING = '\0rutline-no-words';

/**
 * Leaves the English words out of what is loaded in every language: the page speaks one before anything else, and fetches
 * that one's words alone. Only what speaks none, as the command line and the tests do, needs English to begin with.
 */
export function oneLanguage(): Plugin {
  return {
    name: 'rutline-one-language',
    apply: 'build',
    enforce: 'pre',
    resolveId: (source, importer) =>
      source === './en/en.ts' && importer?.endsWith('/src/words/words.ts') ? NOTHING : null,
    load: (id) => (id === NOTHING ? 'export const en = undefined;' : null),
  };
}
