import { expect, test } from 'vitest';
import { policy } from '../../src/build/policy.ts';

interface Tag {
  readonly attrs: Readonly<Record<string, string>>;
}

test('the policy lets in nothing but what is its own', () => {
  const { transformIndexHtml } = policy() as unknown as { transformIndexHtml: () => readonly Tag[] };
  const [{ attrs }] = transformIndexHtml();
  const directives = Object.fromEntries(
    attrs.content.split('; ').map((one) => [one.slice(0, one.indexOf(' ')), one.split(' ').slice(1)]),
  );
  expect(directives['default-src']).toEqual(["'none'"]);
  expect(directives['base-uri']).toEqual(["'none'"]);
  expect(directives['form-action']).toEqual(["'none'"]);
  expect(directives['object-src'] ?? ["'none'"]).toEqual(["'none'"]);
  // WebAssembly alone may be compiled; text never becomes script.
  const scripts = directives['script-src'].filter((one) => one !== "'wasm-unsafe-eval'");
  expect(scripts).toEqual(["'self'"]);
  expect(directives['worker-src']).toEqual(["'self'"]);
  // What the page itself narrows to the addresses that someone typed (tests/e2e/policy.test.ts).
  expect(["'self'", 'https:', 'http:']).toEqual(expect.arrayContaining(directives['connect-src']));
  for (const [name, sources] of Object.entries(directives))
    if (name !== 'connect-src') expect(sources.join(' ')).not.toMatch(/https?:|\*/);
  expect(attrs.content).not.toMatch(/'unsafe-inline'|'unsafe-eval'|'unsafe-hashes'/);
});
