import './language.ts';
import { orderFor } from '../convoy/passes.ts';
import type { OrderTask } from './order.ts';

self.onmessage = ({ data }: MessageEvent<OrderTask>) => {
  self.postMessage(orderFor(data.places, data.vehicles, data.direction));
};
