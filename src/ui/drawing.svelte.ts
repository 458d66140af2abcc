import { TRIP_LIMITS } from '../archive/limits.ts';
import { wrapLng } from '../route/ellipsoid.ts';
import type { BypassPath } from '../terrain/bypassPath.ts';
import { counted } from '../units.ts';
import { say } from '../words/words.ts';
import { notices } from './notice.svelte.ts';
import { obstacleOf } from './obstacleEdit.ts';
import { bypassOf, withPath } from './pathEdit.ts';
import { open } from './trip.svelte.ts';
import { where } from './where.svelte.ts';

/** A path that is being drawn for a bypass. The trip keeps the one before until this one is done. */
interface Sketch {
  readonly tripId: string;
  readonly obstacleId: string;
  readonly lineId: string;
  readonly points: BypassPath;
}

const KEY = 'rutline.drawing';
/** Half-drawn paths that are kept, of all trips. */
const MOST = 50;

/** What is being drawn on the map; outlives the page, as half a path is work done. */
class PathDrawing {
  /** At most one is drawn on at a time; the others are those of other trips, or of bypasses that are not there now. */
  #sketches = $state.raw<readonly Sketch[]>(kept());
  #isStored = true;

  get #current(): Sketch | null {
    const { id } = open.now;
    const isHere = ({ tripId, obstacleId, lineId }: Sketch) =>
      tripId === id && bypassOf(open.now, obstacleId, lineId) !== undefined;
    return this.#sketches.findLast(isHere) ?? null;
  }

  /** Null where nothing is drawn, or what it was drawn for is no longer there. */
  get now(): (Sketch & { readonly name: string }) | null {
    const sketch = this.#current;
    if (sketch === null) return null;
    const bypass = bypassOf(open.now, sketch.obstacleId, sketch.lineId);
    return { ...sketch, name: bypass?.name || say.lines.bypass };
  }

  /** Whether points would be gone with the page: this device stores nothing for it. */
  get wouldBeLost(): boolean {
    return !this.#isStored && this.#sketches.some(({ points }) => points.length > 0);
  }

  isFor(lineId: string): boolean {
    return this.now?.lineId === lineId;
  }

  /** A path that is half drawn for another bypass stays, and it is said where that is. */
  start(obstacleId: string, lineId: string): void {
    const { now } = this;
    if (now === null || now.points.length === 0) {
      this.#become({ tripId: open.now.id, obstacleId, lineId, points: [] });
      return;
    }
    const obstacle = obstacleOf(open.now, now.obstacleId);
    notices.say(say.lines.halfDrawn(now.name, obstacle?.name || say.obstacle.theObstacle), {
      name: say.lines.showHalfDrawn,
      run: () => where.go({ desk: 'scout', sheet: 'obstacles', obstacleId: now.obstacleId }),
    });
  }

  add(lng: number, lat: number): void {
    const sketch = this.#current;
    if (sketch === null) return;
    if (sketch.points.length < TRIP_LIMITS.path)
      this.#become({ ...sketch, points: [...sketch.points, [wrapLng(lng), lat]] });
    else notices.say(say.lines.pathMost(counted(TRIP_LIMITS.path)));
  }

  undo(): void {
    const sketch = this.#current;
    if (sketch) this.#become({ ...sketch, points: sketch.points.slice(0, -1) });
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
    const { now } = this;
    if (now === null) return;
    const { name, ...sketch } = now;
    this.#become(null);
    if (sketch.points.length > 0)
      notices.say(say.lines.leftDrawing(name), {
        name: say.notices.putBack,
        run: () => this.#keep([...this.#sketches, sketch]),
      });
  }

  /** Another sketch, or none, instead of the one that is drawn on. */
  #become(sketch: Sketch | null): void {
    const current = this.#current;
    const others = this.#sketches.filter((one) => one !== current);
    this.#keep(sketch === null ? others : [...others, sketch]);
  }

  #keep(sketches: readonly Sketch[]): void {
    this.#sketches = sketches.slice(-MOST);
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#sketches));
      this.#isStored = true;
    } catch {
      this.#isStored = false;
    }
  }
}

/** That of an earlier program is one alone. */
function kept(): Sketch[] {
  try {
    const sketches = JSON.parse(localStorage.getItem(KEY) ?? '[]') as Sketch | Sketch[] | null;
    return sketches === null ? [] : [sketches].flat();
  } catch {
    return [];
  }
}

export const drawing = new PathDrawing();
