import type { Here } from '../map/subject.ts';

/** Older than this, what a receiver said is not where someone who walks or drives is now. */
const OLD_MS = 30_000;
/** How long the device may look before it is said that it finds nothing. */
const PATIENCE_MS = 30_000;
/** How often it is looked whether what is known has grown old. */
const LOOK_EVERY_MS = 5000;

/** Why the place of this device is not known: the person or the browser forbids it, or it is not told (yet). */
export type Hindrance = 'refused' | 'no receiver' | 'not told' | 'too long';

/** What the receiver said last. */
interface Fix {
  readonly lng: number;
  readonly lat: number;
  readonly accuracyM: number;
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  readonly atMs: number;
}

/** Where this device is, while it is wanted and the page is seen; the receiver is left alone at all other times. */
class Whereabouts {
  /** The person wants to see it. */
  wanted = $state.raw(false);
  hindrance = $state.raw<Hindrance | null>(null);
  #fix = $state.raw<Fix | null>(null);
  #nowMs = $state.raw(0);
  #watch: number | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;

  /** How old the place is, milliseconds; 0 without one. */
  get ageMs(): number {
    return this.#fix === null ? 0 : Math.max(0, this.#nowMs - this.#fix.atMs);
  }

  /** Null while it is not wanted, or not known yet. */
  get here(): Here | null {
    if (this.#fix === null) return null;
    const { lng, lat, accuracyM } = this.#fix;
    return { lng, lat, accuracyM, isOld: this.ageMs > OLD_MS };
  }

  on(): void {
    this.wanted = true;
    this.hindrance = null;
    this.#begin();
  }

  off(): void {
    this.wanted = false;
    this.hindrance = null;
    this.#end();
  }

  /** The page is seen, or hidden behind others; what was known before that is forgotten. */
  seen(isSeen: boolean): void {
    if (!isSeen) this.#end();
    else if (this.wanted) this.#begin();
  }

  #begin(): void {
    if (this.#watch !== null) return;
    const receiver = (navigator as Partial<Navigator>).geolocation;
    if (receiver === undefined) return this.#give('no receiver');
    this.#watch = receiver.watchPosition(
      ({ coords, timestamp }) => {
        this.hindrance = null;
        this.#fix = {
          lng: coords.longitude,
          lat: coords.latitude,
          accuracyM: coords.accuracy,
          atMs: timestamp,
        };
        this.#nowMs = Date.now();
      },
      ({ code, PERMISSION_DENIED, TIMEOUT }) => {
        if (code === PERMISSION_DENIED) this.#give('refused');
        else this.hindrance = code === TIMEOUT ? 'too long' : 'not told';
      },
      { enableHighAccuracy: true, timeout: PATIENCE_MS },
    );
    this.#timer = setInterval(() => (this.#nowMs = Date.now()), LOOK_EVERY_MS);
  }

  #give(hindrance: Hindrance): void {
    this.off();
    this.hindrance = hindrance;
  }

  #end(): void {
    if (this.#watch !== null) navigator.geolocation.clearWatch(this.#watch);
    clearInterval(this.#timer);
    this.#watch = null;
    this.#fix = null;
  }
}

export const whereabouts = new Whereabouts();
