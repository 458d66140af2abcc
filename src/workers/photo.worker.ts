import type { PhotoTask } from './redraw.ts';
import { redrawn } from './redraw.ts';

self.onmessage = async ({ data }: MessageEvent<PhotoTask>) => self.postMessage(await redrawn(data));
