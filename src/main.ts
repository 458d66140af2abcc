import { mount } from 'svelte';
import App from './ui/App.svelte';
import './ui/ink.css';
import { offline } from './ui/offline.svelte.ts';
import { start } from './ui/start.ts';

const target = document.getElementById('app');
if (target === null) throw new Error('index.html has no #app to start in');
await start();
mount(App, { target });
if (import.meta.env.PROD) void offline.begin();
