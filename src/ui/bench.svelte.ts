import { tick } from 'svelte';
import type { Sweep } from '../grade/sweep.ts';
import { offsetOf } from '../grade/verdict.ts';
import type { Change, Try } from '../grade/whatIf.ts';
import { groundHeld } from '../terrain/heldGrip.ts';
import type { How } from '../terrain/measure.ts';
import type { Line, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import { asTravelled } from '../terrain/travelled.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Look, LookTask, SweepTask } from '../workers/bench.ts';
import { newestOnly } from '../workers/newest.ts';
import { BenchWorker } from '../workers/workbench.ts';
import { say } from '../words/words.ts';
import { answers } from './answers.svelte.ts';
import { withValue } from './groundEdit.ts';
import { newId } from './identity.ts';
import { addOffset, changeLine, changeObstacle, obstacleOf, withStretch } from './obstacleEdit.ts';
import type { Place } from './place.ts';
import { open } from './trip.svelte.ts';

type BenchPlace = Extract<Place, { desk: 'workbench' }>;

/** A size or the offset, as recorded, while it is held and not let go yet; the trip does not know of it. */
interface Held {
  readonly path: string | null;
  readonly value: number;
}

/** A task with the time of what asked for it, on the page's clock. */
interface Timed<Task> {
  readonly task: Task;
  readonly sinceMs: number;
}

/**
 * Stillness after which what takes longer is worked out: the fine sweep with its verdicts, and what else could be. Never
 * while a hand holds on, which would have to wait for it on a machine that is slow anyway.
 */
const REST_MS = 250;

/** One obstacle, vehicle, line and direction on the workbench, and what the workers say of it. */
export class Bench {
  readonly #place: () => BenchPlace;
  /** Looks, coarse sweeps, and what is worked out at rest, each on its own, so that none waits for a longer one. */
  readonly #workers = { look: new BenchWorker(), sweep: new BenchWorker(), rest: new BenchWorker() };
  #rest: ReturnType<typeof setTimeout> | undefined;
  #changedMs: number | null = null;

  /** The rung that is looked at; null for the one that the verdict asks for. */
  rung = $state.raw<number | null>(null);
  otherId = $state.raw<string | null>(null);
  /** An offset tried on a line that has none of its own, as travelled. */
  triedM = $state.raw<number | null>(null);
  /** Where mid-wheelbase stands; null for where it is nearest to a limit. */
  movedToM = $state.raw<number | null>(null);
  /** Index of the feature whose every size can be taken hold of. */
  chosen = $state.raw<number | null>(null);
  held = $state.raw<Held | null>(null);

  look = $state.raw<Look | null>(null);
  lookOn = $state.raw<LookTask | null>(null);
  sweep = $state.raw<Sweep | null>(null);
  sweepOn = $state.raw<SweepTask | null>(null);
  changes = $state.raw<readonly Change[] | null>(null);
  fault = $state.raw<string | null>(null);

  constructor(place: () => BenchPlace) {
    this.#place = place;
  }

  readonly obstacle: Obstacle | undefined = $derived.by(() => obstacleOf(open.now, this.#place().obstacleId));
  readonly vehicle: Vehicle | undefined = $derived.by(
    () => open.now.vehicles.find(({ id }) => id === this.#place().vehicleId) ?? open.now.vehicles[0],
  );
  readonly line: Line | undefined = $derived.by(
    () => this.obstacle?.lines.find(({ id }) => id === this.#place().lineId) ?? this.obstacle?.lines[0],
  );
  readonly other: Vehicle | null = $derived.by(
    () => open.now.vehicles.find(({ id }) => id === this.otherId && id !== this.vehicle?.id) ?? null,
  );
  readonly turned: 1 | -1 = $derived.by(() => (open.now.direction === 'reversed' ? -1 : 1));
  /** As recorded, with what is held in it. */
  readonly stretch: Stretch | null = $derived.by(() => {
    if (this.obstacle === undefined || this.line === undefined) return null;
    const stretch = stretchOf(this.obstacle, this.line);
    const { held } = this;
    return held === null || held.path === null
      ? stretch
      : withValue(stretch, held.path, held.value, 'by eye');
  });
  /** The same as travelled: what handles stand on, ahead of the workers' answer. */
  readonly travelled: Stretch | null = $derived.by(() =>
    this.stretch === null ? null : asTravelled(this.stretch, open.now.direction),
  );
  /** As travelled. */
  readonly offsetM: number = $derived.by(() => {
    if (this.line === undefined) return 0;
    if (this.held !== null && this.held.path === null) return this.held.value * this.turned;
    if (this.line.kind !== 'offset' && this.triedM !== null) return this.triedM;
    return offsetOf(this.line, open.now.direction);
  });

  readonly task: LookTask | null = $derived.by(() => {
    const { obstacle, vehicle, stretch, offsetM, rung, other } = this;
    if (obstacle === undefined || vehicle === undefined || stretch === null) return null;
    const trackSlope = answers.trackSlopeAt(obstacle.stationM);
    const ground = groundHeld(stretch, open.now.heldGrips);
    const on: Try = { vehicle, stretch: ground, direction: open.now.direction, trackSlope, offsetM };
    return { on, rung, other };
  });
  readonly lookedRung = $derived(this.look?.rung ?? 0);

  readonly #askLook = newestOnly<Timed<LookTask>, Look>(
    ({ task }) => this.#workers.look.ask('look', task),
    (look, { task, sinceMs }) => {
      this.look = look;
      this.lookOn = task;
      this.fault = null;
      void this.#shown('workbench: drawings', sinceMs);
    },
    (error) => this.#failed(error),
  );

  readonly #askCoarse = newestOnly<Timed<SweepTask>, Sweep | null>(
    ({ task }) => this.#workers.sweep.ask('sweep', task),
    (sweep, { task, sinceMs }) => {
      if (this.sweepOn?.on === task.on && this.sweepOn.rung === task.rung) return;
      this.sweep = sweep;
      this.sweepOn = task;
      void this.#shown('workbench: sweep', sinceMs);
    },
    (error) => this.#failed(error),
  );

  readonly #askFine = newestOnly<SweepTask, Sweep | null>(
    (task) => this.#workers.rest.ask('sweep', task),
    (sweep, task) => {
      if (task.on !== this.task?.on || task.rung !== this.lookedRung) return;
      this.sweep = sweep;
      this.sweepOn = task;
    },
    (error) => this.#failed(error),
  );

  readonly #askWhatIf = newestOnly<Try, readonly Change[]>(
    (on) => this.#workers.rest.ask('whatIf', on),
    (changes, on) => {
      if (on === this.task?.on) this.changes = changes;
    },
    (error) => this.#failed(error),
  );

  /** Asks anew for what is on the bench; for an effect. */
  ask(): void {
    const { task, held, lookedRung: rung } = this;
    if (task === null) return;
    const sinceMs = this.#changedMs ?? performance.now();
    this.#changedMs = null;
    this.#askLook({ task, sinceMs });
    this.#askCoarse({ task: { on: task.on, rung, grain: 'coarse' }, sinceMs });
    clearTimeout(this.#rest);
    if (held !== null) return;
    this.#rest = setTimeout(() => {
      this.#askFine({ on: task.on, rung, grain: 'fine' });
      this.#askWhatIf(task.on);
    }, REST_MS);
  }

  stop(): void {
    clearTimeout(this.#rest);
    for (const worker of Object.values(this.#workers)) worker.stop();
  }

  /** Takes hold of a size (or, with no path, of the offset) and moves it; `sinceMs` is when the hand moved. */
  hold(path: string | null, value: number, sinceMs: number): void {
    this.#changedMs ??= sinceMs;
    this.held = { path, value };
  }

  /** Lets go: the trip learns of it, as one step. A dragged size counts as judged by eye. */
  letGo(what: string): void {
    const { held } = this;
    this.held = null;
    if (held !== null) this.put(held.path, held.value, what, 'by eye');
    open.seal();
  }

  /** Lets go as if nothing had been. */
  drop(): void {
    this.held = null;
  }

  /** Puts a size, as recorded, into the trip; presses in a row on one handle are one step until it is left. */
  put(path: string | null, value: number, what: string, how: How): void {
    const { obstacle, line } = this;
    if (obstacle === undefined || line === undefined) return;
    if (path === null && line.kind !== 'offset') {
      this.triedM = value * this.turned;
      return;
    }
    const change = (before: Obstacle): Obstacle => {
      if (path === null)
        return changeLine(before, line.id, (one) =>
          one.kind === 'offset' ? { ...one, offsetM: value } : one,
        );
      const now = before.lines.find(({ id }) => id === line.id) ?? line;
      const lineId = line.kind === 'bypass' ? line.id : null;
      return withStretch(before, lineId, withValue(stretchOf(before, now), path, value, how));
    };
    const key = `${obstacle.id}/${line.kind === 'bypass' ? `${line.id}/` : ''}${path ?? `offset/${line.id}`}`;
    open.edit(say.entry.change(what), (trip) => changeObstacle(trip, obstacle.id, change), key);
  }

  /** Keeps the offset that is being tried as a line of its own; answers its id. */
  keepTried(): string | null {
    const { obstacle, triedM, turned } = this;
    if (obstacle === undefined || triedM === null) return null;
    const id = newId();
    open.edit(say.lines.step.addOffset, (trip) =>
      changeObstacle(trip, obstacle.id, (before) =>
        changeLine(addOffset(before, id), id, (line) =>
          line.kind === 'offset' ? { ...line, offsetM: triedM * turned } : line,
        ),
      ),
    );
    this.triedM = null;
    return id;
  }

  #failed(error: unknown): void {
    this.fault = say.bench.fault(String(error));
  }

  /** Notes how long it took from the hand's move until the picture stood, where the browser's own tools show it. */
  async #shown(name: string, sinceMs: number): Promise<void> {
    await tick();
    requestAnimationFrame(() => {
      setTimeout(() => performance.measure(name, { start: sinceMs, end: performance.now() }));
    });
  }
}
