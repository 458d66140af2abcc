import { mount } from 'svelte';
import App from './App.svelte';
import './ink.css';
import { offline } from './offline.svelte.ts';
import { start } from './start.ts';

/** Puts the program on the page. */
export async function begin(): Promise<void> {
  const target = document.getElementById('app');
  if (target === null) throw new Error('index.html has no #app to start in');
  await start();
  mount(App, { target });
  if (import.meta.env.PROD) void offline.begin();
}
