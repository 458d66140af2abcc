import { tick, untrack } from 'svelte';
import type { Sweep } from '../grade/sweep.ts';
import { offsetOf } from '../grade/verdict.ts';
import type { Change, Try } from '../grade/whatIf.ts';
import { groundHeld } from '../terrain/heldGrip.ts';
import type { How } from '../terrain/measure.ts';
import type { Line, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import { asTravelled } from '../terrain/travelled.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Look, LookTask } from '../workers/bench.ts';
import { newestOnly } from '../workers/newest.ts';
import { BenchWorker } from '../workers/workbench.ts';
import { say } from '../words/words.ts';
import { answers } from './answers.svelte.ts';
import { movedALittle, remade, withValue } from './groundEdit.ts';
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

/** Sizes as recorded and as travelled, and the offset as travelled. */
interface Told {
  readonly stretch: Stretch;
  readonly travelled: Stretch;
  readonly offsetM: number;
}

/** A look with the sweep of the same size and rung: what is shown together belongs together. */
interface Shown {
  readonly look: Look;
  readonly sweep: Sweep | null;
}

/**
 * Stillness after which what takes longer is worked out: the fine sweep with its verdicts, and what else could be. Never
 * while a hand holds on, which would have to wait for it on a machine that is slow anyway.
 */
const REST_MS = 250;

/**
 * Looks with their coarse sweeps, and what is worked out at rest, each on its own, so that none waits for a longer one. Kept
 * from one visit to the next, as they get faster with use.
 */
const workers = { look: new BenchWorker(), sweep: new BenchWorker(), rest: new BenchWorker() };

/** Looks for nobody after which browser and workers have made the code of a look fast. */
const WARMING_LOOKS = 160;
let warmed = 0;

/** One obstacle, vehicle, line and direction on the workbench, and what the workers say of it. */
export class Bench {
  readonly #place: () => BenchPlace;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #changedMs: number | null = null;
  #isLeft = false;

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
  /** What else could be, and what it was worked out for. */
  #changes = $state.raw<{ readonly on: LookTask; readonly changes: readonly Change[] } | null>(null);
  /** What stood on the bench when it was said that nothing more should be worked out of it. */
  #stoppedOn = $state.raw<LookTask | null>(null);
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
  /** Does not change from move to move, so that what follows from it is not worked out for a move alone. */
  readonly #isHeld: boolean = $derived.by(() => this.held !== null);
  /** As recorded, with what is held in it. */
  readonly stretch: Stretch | null = $derived.by(() => {
    if (this.obstacle === undefined || this.line === undefined) return null;
    const stretch = stretchOf(this.obstacle, this.line);
    const { held } = this;
    return held === null || held.path === null
      ? stretch
      : withValue(stretch, held.path, held.value, 'by eye');
  });
  /** As travelled. */
  readonly offsetM: number = $derived.by(() => {
    if (this.line === undefined) return 0;
    if (this.held !== null && this.held.path === null) return this.held.value * this.turned;
    if (this.line.kind !== 'offset' && this.triedM !== null) return this.triedM;
    return offsetOf(this.line, open.now.direction);
  });
  /**
   * What handles and boxes tell: the sizes as they are, of which keys count on; while a hand holds one, those of the drawing,
   * so that all of it moves at once and the page is laid out once a move.
   */
  readonly told: Told | null = $derived.by(() => {
    const { stretch, offsetM } = this.#isHeld && this.lookOn !== null ? this.lookOn.on : this;
    return stretch && { stretch, travelled: asTravelled(stretch, open.now.direction), offsetM };
  });

  readonly task: LookTask | null = $derived.by(() => {
    const { obstacle, vehicle, stretch, offsetM, rung, other } = this;
    if (obstacle === undefined || vehicle === undefined || stretch === null) return null;
    const trackSlope = answers.trackSlopeAt(obstacle.stationM);
    const ground = groundHeld(stretch, open.now.heldGrips);
    const { direction, vehicles } = open.now;
    const ahead = vehicles.findIndex(({ id }) => id === vehicle.id);
    const on: Try = { vehicle, stretch: ground, direction, trackSlope, offsetM, ahead };
    return { on, rung, other };
  });
  /** Null until it was worked out for the first time. */
  readonly changes: readonly Change[] | null = $derived.by(() => this.#changes?.changes ?? null);
  /** Whether they are those of what stands on the bench, and not of what stood there before. */
  readonly areChangesOfThis: boolean = $derived.by(() => this.#changes?.on === this.task);
  /** What else could be is not worked out for what stands on the bench, as was wished. */
  readonly areChangesStopped: boolean = $derived.by(
    () => this.#stoppedOn !== null && this.#stoppedOn === this.task,
  );
  readonly #askShown = newestOnly<Timed<LookTask>, Shown>(
    ({ task }) => this.#lookAt(task),
    ({ look, sweep }, { task, sinceMs }) => {
      this.look = look;
      this.lookOn = task;
      this.sweep = sweep;
      this.fault = null;
      void this.#noteTime(sinceMs);
      if (this.#isLeft || task !== this.task || this.held !== null || this.areChangesStopped) return;
      this.#warmUp(task).catch(this.#failed);
      this.#rest = setTimeout(() => void this.#atRest(task, look.rung).catch(this.#failed), REST_MS);
    },
    (error) => this.#failed(error),
  );

  /** Asks anew for what is on the bench; for an effect. What was worked out at rest is of no use any more. */
  ask(): void {
    const { task } = this;
    clearTimeout(this.#rest);
    workers.rest.drop();
    if (task === null) return;
    const sinceMs = this.#changedMs ?? performance.now();
    this.#changedMs = null;
    untrack(() => this.#askShown({ task, sinceMs }));
  }

  stop(): void {
    this.#isLeft = true;
    clearTimeout(this.#rest);
    workers.rest.drop();
  }

  /** Ends what is worked out at rest, the fine sweep and what else could be, until something is moved or it goes on. */
  stopChanges(): void {
    this.#stoppedOn = this.task;
    clearTimeout(this.#rest);
    workers.rest.drop();
  }

  goOnWithChanges(): void {
    this.#stoppedOn = null;
    const { task, look } = this;
    if (task !== null && look !== null) this.#atRest(task, look.rung).catch(this.#failed);
  }

  /** Both at once, the sweep for the rung that was looked at before; where that has changed, the sweep once more. */
  async #lookAt(task: LookTask): Promise<Shown> {
    const guess = task.rung ?? this.look?.rung ?? 0;
    const sweepAt = (rung: number) => workers.sweep.ask('sweep', { on: task.on, rung, grain: 'coarse' });
    const [look, sweep] = await Promise.all([workers.look.ask('look', task), sweepAt(guess)]);
    return { look, sweep: look.rung === guess ? sweep : await sweepAt(look.rung) };
  }

  async #atRest(task: LookTask, rung: number): Promise<void> {
    const sweep = await workers.rest.ask('sweep', { on: task.on, rung, grain: 'fine' });
    if (task !== this.task) return;
    this.sweep = sweep;
    const changes = await workers.rest.ask('whatIf', task.on);
    if (task === this.task) this.#changes = { on: task, changes };
  }

  /**
   * Looks at the same again and draws it anew, which shows nothing new, so that the first moves of a hand are no slower than
   * the others; ends where one moves. Browsers make code fast for what it has met: between two looks that are drawn, one is not
   * whose sizes are moved, and of those that are every other one has records made as those that a hand moves.
   */
  async #warmUp(task: LookTask): Promise<void> {
    const { stretch } = task.on;
    for (; warmed < WARMING_LOOKS; warmed++) {
      const isDrawn = warmed % 2 === 1;
      const same = warmed % 4 === 1 ? remade(stretch) : stretch;
      const again = {
        ...task,
        on: { ...task.on, stretch: isDrawn ? same : movedALittle(stretch, warmed / 2) },
      };
      const { look } = await this.#lookAt(again);
      if (task !== this.task || this.held !== null || this.#isLeft) return;
      if (!isDrawn) continue;
      this.look = look;
      this.lookOn = again;
    }
  }

  /** Takes hold of a size (or, with no path, of the offset) and moves it; `sinceMs` is when the hand moved. */
  hold(path: string | null, value: number, sinceMs: number): void {
    if (this.held?.path === path && this.held.value === value) return;
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

  readonly #failed = (error: unknown): void => {
    this.fault = say.bench.fault(String(error));
  };

  /** Notes how long it took from the hand's move until the picture stood, where the browser's own tools show it. */
  async #noteTime(sinceMs: number): Promise<void> {
    await tick();
    requestAnimationFrame(() => {
      setTimeout(() => {
        performance.measure('workbench: redrawn', { start: sinceMs, end: performance.now() });
      });
    });
  }
}
