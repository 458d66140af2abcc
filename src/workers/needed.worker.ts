import './language.ts';
import type { Attempt } from '../grade/neededAdhesion.ts';
import { neededAdhesion } from '../grade/neededAdhesion.ts';

self.onmessage = ({ data }: MessageEvent<readonly Attempt[]>) => {
  self.postMessage(data.map((attempt) => neededAdhesion(attempt)));
};
