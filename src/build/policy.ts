import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';
import { PAGE_STYLE } from '../brief/pageStyle.ts';

/** The frame that prints the briefing inherits the policy; its one style sheet is let in by its content. */
const printStyle = `'sha256-${createHash('sha256').update(PAGE_STYLE).digest('base64')}'`;

const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  `style-src 'self' ${printStyle}`,
  "img-src 'self' data: blob:",
  "font-src 'self'",
  // For servers whose addresses the user typed in, in plain http only in their own network (ui/clubAddress.ts); the page
  // narrows this to them as it begins (ui/pagePolicy.ts).
  "connect-src 'self' https: http:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the Content-Security-Policy into the built page. The development server needs inline styles, and has none. */
export function policy(): Plugin {
  return {
    name: 'rutline-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}
