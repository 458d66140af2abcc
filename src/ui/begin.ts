import { mount } from 'svelte';
import App from './App.svelte';
import { background } from './background.svelte.ts';
import { backups } from './backups.svelte.ts';
import './ink.css';
import { offline } from './offline.svelte.ts';
import { relief } from './relief.svelte.ts';
import { start } from './start.ts';
import { storage } from './storage.svelte.ts';
import { narrowPolicy } from './tileAddress.ts';

/** Puts the program on the page. */
export async function begin(): Promise<void> {
  const target = document.getElementById('app');
  if (target === null) throw new Error('index.html has no #app to start in');
  narrowPolicy();
  await start();
  mount(App, { target });
  void background.restore();
  void relief.restore();
  storage.begin();
  void backups.begin();
  if (import.meta.env.PROD) void offline.begin();
}
