import { mount } from 'svelte';
import App from './App.svelte';
import { background } from './background.svelte.ts';
import { backups } from './backups.svelte.ts';
import './ink.css';
import { say } from '../words/words.ts';
import { offline } from './offline.svelte.ts';
import { narrowPolicy } from './pagePolicy.ts';
import { relief } from './relief.svelte.ts';
import { start } from './start.ts';
import { storage } from './storage.svelte.ts';

/** After so long an empty page says what is waited for. */
const SAID_AFTER_MS = 1_000;

/** Puts the program on the page. */
export async function begin(): Promise<void> {
  const target = document.getElementById('app');
  if (target === null) throw new Error('index.html has no #app to start in');
  narrowPolicy();
  const saying = setTimeout(() => {
    const words = document.createElement('p');
    words.className = 'opening';
    words.textContent = say.notices.opening;
    target.replaceChildren(words);
  }, SAID_AFTER_MS);
  await start();
  clearTimeout(saying);
  target.replaceChildren();
  mount(App, { target });
  void background.restore();
  void relief.restore();
  storage.begin();
  void backups.begin();
  if (import.meta.env.PROD) void offline.begin();
}
