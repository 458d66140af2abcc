import type { Rest, Sample, Zero, ZeroFault } from '../terrain/inclinometer.ts';
import { recent, restOf, upwardOf, zeroOf } from '../terrain/inclinometer.ts';
import { rad } from '../units.ts';

/** Whether this device tells how it lies. `crosswise`: its top is a long edge, as on some tablets. */
export type Telling = 'not asked' | 'waiting' | 'tells' | 'refused' | 'no sensor' | 'crosswise';

/** A zero, and when it was taken, milliseconds since 1970-01-01T00:00:00Z. */
export interface KeptZero extends Zero {
  readonly atMs: number;
}

/** Where Safari asks the person, who must just have pressed something. */
interface Asking {
  readonly requestPermission?: () => Promise<'granted' | 'denied'>;
}

const LOOK_EVERY_MS = 100;
/** A sensor that has said nothing for so long is none. */
const SILENT_MS = 3000;
const ZERO = 'rutline.phoneZero';

/** The inclinometer of this device: what it says while it is watched, and its zero, which stays on the device. */
class Inclinometer {
  telling = $state.raw<Telling>('not asked');
  /** Null until the device has been watched for long enough. */
  rest = $state.raw<Rest | null>(null);
  zero = $state.raw<KeptZero | null>(keptZero());
  /** The first of the two readings of a zero. */
  first = $state.raw<Rest | null>(null);
  #samples: readonly Sample[] = [];
  #timer: ReturnType<typeof setInterval> | undefined;

  /** Begins to watch; called from the press of a button, as some browsers then ask the person. */
  async watch(): Promise<void> {
    this.stop();
    if (topIsLong()) return void (this.telling = 'crosswise');
    this.telling = 'waiting';
    const asking = globalThis.DeviceOrientationEvent as Asking | undefined;
    if (asking === undefined) return void (this.telling = 'no sensor');
    try {
      if ((await asking.requestPermission?.()) === 'denied') return void (this.telling = 'refused');
    } catch {
      return void (this.telling = 'refused');
    }
    addEventListener('deviceorientation', this.#hear);
    const sinceMs = performance.now();
    this.#timer = setInterval(() => this.#look(sinceMs), LOOK_EVERY_MS);
  }

  stop(): void {
    removeEventListener('deviceorientation', this.#hear);
    clearInterval(this.#timer);
    this.#samples = [];
    this.rest = null;
    this.first = null;
  }

  /** The second reading of a zero; null where it is taken, else why it is not. */
  turned(atMs: number): ZeroFault | null {
    if (this.first === null || this.rest === null) return 'moving';
    const zero = zeroOf(this.first, this.rest);
    if (typeof zero === 'string') return zero;
    this.first = null;
    this.#keep({ ...zero, atMs });
    return null;
  }

  forget(): void {
    this.#keep(null);
  }

  readonly #hear = ({ alpha, beta, gamma, timeStamp }: DeviceOrientationEvent): void => {
    if (beta === null || gamma === null) return;
    this.telling = 'tells';
    const sample = {
      atMs: timeStamp,
      up: upwardOf(rad(beta), rad(gamma)),
      turnRad: alpha === null ? NaN : rad(alpha),
    };
    this.#samples = [...this.#samples, sample];
  };

  #look(sinceMs: number): void {
    const nowMs = performance.now();
    if (this.telling === 'waiting' && nowMs - sinceMs > SILENT_MS) this.telling = 'no sensor';
    this.#samples = recent(this.#samples, nowMs);
    this.rest = restOf(this.#samples, nowMs);
  }

  #keep(zero: KeptZero | null): void {
    this.zero = zero;
    try {
      if (zero === null) localStorage.removeItem(ZERO);
      else localStorage.setItem(ZERO, JSON.stringify(zero));
    } catch {
      return;
    }
  }
}

/** Whether the top of the device, by which its axes are named, is one of its long edges. */
function topIsLong(): boolean {
  const { type, angle } = (screen.orientation as ScreenOrientation | undefined) ?? {};
  if (type === undefined || angle === undefined) return false;
  return type.startsWith('landscape') === (angle % 180 === 0);
}

function keptZero(): KeptZero | null {
  try {
    const { up, plusMinusRad, atMs } = JSON.parse(localStorage.getItem(ZERO) ?? 'null') as KeptZero;
    const numbers: readonly unknown[] = [up.x, up.y, up.z, plusMinusRad, atMs];
    return numbers.every(Number.isFinite) ? { up, plusMinusRad, atMs } : null;
  } catch {
    return null;
  }
}

export const inclinometer = new Inclinometer();
