import { TRIP_LIMITS } from '../archive/limits.ts';
import { wrapLng } from '../route/ellipsoid.ts';
import type { BypassPath } from '../terrain/bypassPath.ts';
import { counted } from '../units.ts';
import { say } from '../words/words.ts';
import { notices } from './notice.svelte.ts';
import { bypassOf, withPath } from './pathEdit.ts';
import { open } from './trip.svelte.ts';

/** A path that is being drawn for a bypass. The trip keeps the one before until this one is done. */
interface Sketch {
  readonly tripId: string;
  readonly obstacleId: string;
  readonly lineId: string;
  readonly points: BypassPath;
}

const KEY = 'rutline.drawing';

/** What is being drawn on the map; outlives the page, as half a path is work done. */
class PathDrawing {
  #sketch = $state.raw<Sketch | null>(kept());

  /** Null where nothing is drawn, or what it was drawn for is no longer there. */
  get now(): (Sketch & { readonly name: string }) | null {
    const sketch = this.#sketch;
    if (sketch === null || sketch.tripId !== open.now.id) return null;
    const bypass = bypassOf(open.now, sketch.obstacleId, sketch.lineId);
    return bypass ? { ...sketch, name: bypass.name || say.lines.bypass } : null;
  }

  isFor(lineId: string): boolean {
    return this.now?.lineId === lineId;
  }

  start(obstacleId: string, lineId: string): void {
    this.#become({ tripId: open.now.id, obstacleId, lineId, points: [] });
  }

  add(lng: number, lat: number): void {
    const { now } = this;
    if (now === null) return;
    if (now.points.length < TRIP_LIMITS.path)
      this.#become({ ...now, points: [...now.points, [wrapLng(lng), lat]] });
    else notices.say(say.lines.pathMost(counted(TRIP_LIMITS.path)));
  }

  undo(): void {
    const { now } = this;
    if (now) this.#become({ ...now, points: now.points.slice(0, -1) });
  }

  done(): void {
    const { now } = this;
    if (now === null || now.points.length < 2) return;
    this.#become(null);
    open.edit(say.lines.step.draw(now.name), (trip) =>
      withPath(trip, now.obstacleId, now.lineId, now.points),
    );
    notices.offerUndo(say.lines.drew(now.name));
  }

  cancel(): void {
    this.#become(null);
  }

  #become(sketch: Sketch | null): void {
    this.#sketch = sketch;
    try {
      if (sketch === null) localStorage.removeItem(KEY);
      else localStorage.setItem(KEY, JSON.stringify(sketch));
    } catch {
      return;
    }
  }
}

function kept(): Sketch | null {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null') as Sketch | null;
  } catch {
    return null;
  }
}

export const drawing = new PathDrawing();
