import { mount } from 'svelte';
import App from './App.svelte';
import { backups } from './backups.svelte.ts';
import './ink.css';
import { offline } from './offline.svelte.ts';
import { start } from './start.ts';
import { storage } from './storage.svelte.ts';

/** Puts the program on the page. */
export async function begin(): Promise<void> {
  const target = document.getElementById('app');
  if (target === null) throw new Error('index.html has no #app to start in');
  await start();
  mount(App, { target });
  storage.begin();
  void backups.begin();
  if (import.meta.env.PROD) void offline.begin();
}
