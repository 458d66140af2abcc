import { mount } from 'svelte';
import App from './ui/App.svelte';
import './ui/ink.css';
import { start } from './ui/start.ts';

const target = document.getElementById('app');
if (target === null) throw new Error('index.html has no #app to start in');
await start();
mount(App, { target });
