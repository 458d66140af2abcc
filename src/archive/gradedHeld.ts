import type { Feature, FeatureKind } from '../terrain/feature.ts';
import { featureFields } from '../terrain/feature.ts';
import type { Hows } from '../terrain/measure.ts';
import type { Line, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { corridorFields, planeFields } from '../terrain/obstacle.ts';
import { surfaceFields } from '../terrain/surface.ts';
import { aligned, orders } from './aligned.ts';
import { GRADED_FORMAT, GRADED_VERSION } from './gradedRecord.ts';
import type { GradedTrack, Outcome, Surveyed, Visit } from './gradedTrack.ts';
import { Branch, keyOf, plainOf } from './heldKey.ts';
import type { Plain } from './reader.ts';
import type { Held, Scalar } from './replica.ts';
import { recordToJson } from './share.ts';
import { trackRecord } from './trackRecord.ts';

const PARTS = { plane: planeFields, surface: surfaceFields, corridor: corridorFields } as const;

/** Fields of an outcome that are kept one by one; its vehicle stands as it was that day. */
const OUTCOME_FIELDS = [
  'atMs',
  'by',
  'vehicle',
  'lineId',
  'direction',
  'rung',
  'said',
  'did',
  'note',
] as const;

/**
 * What a replica must hold to say what a graded track says, key by key. Ground is that of the visits: `obstacle.stretch`
 * follows from the newest. What has no id of its own (features) or a place in a list (lines, photos) finds it again in
 * what the replica `held` before. `newSlot` names a feature that nobody else can have added: one that comes to ground which
 * was there before. Features that come with their ground are named for their places in it, so that people who file the
 * same record without knowing of each other say the same.
 */
export function entriesOf(graded: GradedTrack, held: Held, newSlot: () => string): Map<string, Scalar> {
  return new Entries(Branch.of(held), newSlot).of(graded);
}

class Entries {
  readonly #all = new Map<string, Scalar>();
  readonly #held: Branch;
  readonly #newSlot: () => string;

  constructor(held: Branch, newSlot: () => string) {
    this.#held = held;
    this.#newSlot = newSlot;
  }

  of({ id, name, area, note, track, waypoints, surveyed }: GradedTrack): Map<string, Scalar> {
    this.#set(['id'], id);
    this.#set(['name'], name);
    this.#set(['area'], area);
    this.#set(['note'], note);
    this.#set(['track'], track && trackRecord(track));
    this.#set(['waypoints'], waypoints);
    for (const one of surveyed) this.#surveyed(['surveyed', one.obstacle.id], one);
    return this.#all;
  }

  #surveyed(at: readonly string[], { obstacle, visits, outcomes }: Surveyed): void {
    const { name, preset, note, lng, lat, stationM } = obstacle;
    this.#there(at);
    this.#set([...at, 'name'], name);
    this.#set([...at, 'preset'], preset);
    this.#set([...at, 'note'], note);
    this.#set([...at, 'place'], [lng, lat, stationM]);
    this.#lines([...at, 'lines'], obstacle.lines);
    this.#photos([...at, 'photos'], obstacle.photos);
    for (const visit of visits) this.#visit([...at, 'visits', visit.id], visit);
    for (const outcome of outcomes) this.#outcome([...at, 'outcomes', outcome.id], outcome);
  }

  #lines(at: readonly string[], lines: readonly Line[]): void {
    const places = this.#orders(at, lines);
    lines.forEach((line, i) => {
      const here = [...at, line.id];
      this.#there(here);
      this.#set([...here, 'order'], places[i]);
      this.#set([...here, 'kind'], line.kind);
      this.#set([...here, 'name'], line.name);
      if (line.kind !== 'bypass') return this.#set([...here, 'offsetM'], line.offsetM);
      this.#set([...here, 'path'], line.path);
      this.#stretch([...here, 'stretch'], line.stretch);
    });
  }

  #photos(at: readonly string[], photos: Obstacle['photos']): void {
    const places = this.#orders(at, photos);
    photos.forEach(({ id, caption, image }, i) => {
      const here = [...at, id];
      this.#there(here);
      this.#set([...here, 'order'], places[i]);
      this.#set([...here, 'caption'], caption);
      this.#all.set(keyOf(...here, 'image'), image);
    });
  }

  #visit(at: readonly string[], { atMs, by, note, stretch }: Visit): void {
    this.#there(at);
    this.#set([...at, 'atMs'], atMs);
    this.#set([...at, 'by'], by);
    this.#set([...at, 'note'], note);
    this.#stretch([...at, 'stretch'], stretch);
  }

  #outcome(at: readonly string[], outcome: Outcome): void {
    this.#there(at);
    for (const name of OUTCOME_FIELDS) this.#set([...at, name], outcome[name]);
  }

  #stretch(at: readonly string[], stretch: Stretch): void {
    this.#measured([...at, 'lengthM'], stretch.lengthM, stretch.hows, 'lengthM');
    for (const [part, fields] of Object.entries(PARTS))
      for (const name of Object.keys(fields)) {
        const values = stretch[part as keyof typeof PARTS] as Plain;
        this.#measured([...at, part, name], values[name], stretch.hows, `${part}.${name}`);
      }
    this.#features(at, stretch);
  }

  /** Which feature is which is told by what they are: those that stayed keep their slots, those that changed theirs. */
  #features(ground: readonly string[], { features, hows }: Stretch): void {
    const at = [...ground, 'features'];
    const isNewGround = this.#held.at(...ground) === undefined;
    const known = [...(this.#held.at(...at)?.under ?? [])]
      .filter(([, slot]) => isThere(slot))
      .sort(inOrder)
      .map(([slot, branch]) => ({ slot, order: orderOf(branch), cells: cellsHeld(branch) }));
    const cells = features.map((feature, i) => cellsOf(feature, hows, i));
    const pairs = aligned(
      known.map((one) => one.cells),
      cells,
    );
    const places = orders(pairs.map((i) => (i === null ? null : known[i].order)));
    features.forEach((_, i) => {
      const pair = pairs[i];
      const here = [...at, pair !== null ? known[pair].slot : isNewGround ? String(i) : this.#newSlot()];
      this.#there(here);
      this.#set([...here, 'order'], places[i]);
      for (const [name, cell] of cells[i]) this.#all.set(keyOf(...here, name), cell);
    });
  }

  #orders(at: readonly string[], list: readonly { readonly id: string }[]): number[] {
    return orders(
      list.map(({ id }) => {
        const branch = this.#held.at(...at, id);
        return branch ? orderOf(branch) : null;
      }),
    );
  }

  #there(at: readonly string[]): void {
    this.#set([...at, 'there'], true);
  }

  #measured(at: readonly string[], value: unknown, hows: Hows, path: string): void {
    this.#all.set(keyOf(...at), measuredText(value, hows, path));
  }

  #set(at: readonly string[], value: unknown): void {
    this.#all.set(keyOf(...at), textOf(value));
  }
}

/** A value with how it was got is one: nobody taped the value that someone else judged by eye. */
function measuredText(value: unknown, hows: Hows, path: string): string {
  const how = Object.hasOwn(hows, path) ? hows[path] : undefined;
  return textOf(how === undefined ? [value] : [value, how]);
}

function textOf(value: unknown): string {
  return recordToJson(value).trimEnd();
}

type Cells = ReadonlyMap<string, Scalar>;

function cellsOf(feature: Feature, hows: Hows, i: number): Cells {
  const cells = new Map<string, Scalar>([['kind', textOf(feature.kind)]]);
  const values = feature as unknown as Plain;
  for (const name of Object.keys(featureFields[feature.kind]))
    cells.set(name, measuredText(values[name], hows, `features.${i}.${name}`));
  return cells;
}

function cellsHeld(slot: Branch): Cells {
  const kind = slot.read('kind');
  const named = [...slot.under].filter(([name]) => isOfKind(name, kind));
  return new Map(named.map(([name, { values }]) => [name, values[0]]));
}

/** Of two shapes that were filed for one slot, the sizes of the other kind lie there too, and are none of it. */
function isOfKind(name: string, kind: unknown): boolean {
  if (name === 'there' || name === 'order') return false;
  const isOf = (other: string) => Object.hasOwn(featureFields[other as FeatureKind], name);
  const kinds = Object.keys(featureFields);
  return !kinds.includes(kind as string) || isOf(kind as string) || !kinds.some(isOf);
}

function orderOf(branch: Branch): number {
  const order = branch.read('order');
  return typeof order === 'number' && Number.isFinite(order) ? order : 0;
}

function inOrder([one, a]: readonly [string, Branch], [other, b]: readonly [string, Branch]): number {
  return orderOf(a) - orderOf(b) || (one < other ? -1 : 1);
}

/** What one removed and another changed meanwhile is there until someone chooses. */
function isThere(branch: Branch): boolean {
  return branch.at('there')?.values.some((value) => value === 'true') ?? false;
}

/**
 * The record that a replica holds, for `gradedFrom` to check. Where people measured differently at once nobody knows which
 * is right: that ground's length is not known, and so no verdict on it, until someone has chosen. See `isJudged`.
 */
export function recordFrom(held: Held): Plain {
  const root = Branch.of(held);
  const surveyed = thereIn(root.at('surveyed')).sort(([one], [other]) => (one < other ? -1 : 1));
  const track = root.at('track')?.isTorn() ?? false;
  return {
    format: GRADED_FORMAT,
    version: GRADED_VERSION,
    id: root.read('id'),
    name: root.read('name'),
    area: root.read('area'),
    note: root.read('note'),
    track: root.read('track'),
    waypoints: root.read('waypoints'),
    surveyed: surveyed.map(([id, branch]) => surveyedFrom(id, branch, track)),
  };
}

function surveyedFrom(id: string, branch: Branch, tornTrack: boolean): Plain {
  const place = branch.read('place');
  const [lng, lat, stationM] = Array.isArray(place) ? (place as unknown[]) : [];
  const torn = tornTrack || branch.isTorn((parts) => !isJudgedHere(parts));
  const lines = thereIn(branch.at('lines')).sort(inOrder);
  const photos = thereIn(branch.at('photos')).sort(inOrder);
  const visits = thereIn(branch.at('visits')).map(visitFrom).sort(byAge);
  const outcomes = thereIn(branch.at('outcomes')).map(outcomeFrom).sort(byAge);
  const newest = visits.at(-1)?.stretch;
  return {
    obstacle: {
      id,
      name: branch.read('name'),
      preset: branch.read('preset'),
      lng,
      lat,
      stationM,
      stretch: torn ? unknownGround(newest) : newest,
      lines: lines.map(([lineId, line]) => lineFrom(lineId, line, torn)),
      note: branch.read('note'),
      photos: photos.map(([photoId, photo]) => ({
        id: photoId,
        caption: photo.read('caption'),
        image: photo.read('image'),
      })),
    },
    visits,
    outcomes,
  };
}

/** Of a torn time the latest counts, so that the ground, which is then not known, is not hidden behind an older one. */
function visitFrom([id, branch]: readonly [string, Branch]): Plain {
  const torn = branch.isTorn((parts) => !isJudged(['surveyed', '', 'visits', id, ...parts]));
  const times = (branch.at('atMs')?.values ?? [])
    .map(plainOf)
    .filter((time): time is number => typeof time === 'number');
  const stretch = stretchFrom(branch.at('stretch'));
  return {
    id,
    atMs: times.length > 0 ? times.reduce((a, b) => Math.max(a, b)) : undefined,
    by: branch.read('by'),
    note: branch.read('note'),
    stretch: torn ? unknownGround(stretch) : stretch,
  };
}

function outcomeFrom([id, branch]: readonly [string, Branch]): Plain {
  return { id, ...Object.fromEntries(OUTCOME_FIELDS.map((name) => [name, branch.read(name)])) };
}

function lineFrom(id: string, branch: Branch, torn: boolean): Plain {
  const kind = branch.read('kind');
  const head = { id, kind, name: branch.read('name') };
  if (kind !== 'bypass') return { ...head, offsetM: branch.read('offsetM') };
  const ground = branch.at('stretch');
  const stretch = stretchFrom(ground);
  return {
    ...head,
    path: branch.read('path'),
    stretch: torn || ground?.isTorn(isOrder) ? unknownGround(stretch) : stretch,
  };
}

function stretchFrom(branch: Branch | undefined): Plain {
  const hows: Record<string, unknown> = {};
  const measured = (path: string, at: Branch | undefined, ...parts: readonly string[]): unknown => {
    const cell = at?.read(...parts);
    const [value, how] = Array.isArray(cell) ? (cell as unknown[]) : [];
    if (how !== undefined) hows[path] = how;
    return value;
  };
  const lengthM = measured('lengthM', branch, 'lengthM');
  const parts = Object.entries(PARTS).map(([part, fields]): [string, Plain] => {
    const names = Object.keys(fields);
    const values = names.map((name) => [name, measured(`${part}.${name}`, branch, part, name)] as const);
    return [part, Object.fromEntries(values)];
  });
  const features = thereIn(branch?.at('features'))
    .sort(inOrder)
    .map(([, slot], i): Plain => {
      const kind = slot.read('kind');
      const names = [...slot.under.keys()].filter((name) => name !== 'kind' && isOfKind(name, kind));
      const values = names.map((name) => [name, measured(`features.${i}.${name}`, slot, name)] as const);
      return { kind, ...Object.fromEntries(values) };
    });
  return { lengthM, ...Object.fromEntries(parts), features, hows };
}

function unknownGround(stretch: unknown): Plain {
  return { ...(stretch as Plain), lengthM: null };
}

function thereIn(branch: Branch | undefined): [string, Branch][] {
  return [...(branch?.under ?? [])].filter(([, one]) => isThere(one));
}

function byAge(one: Plain, other: Plain): number {
  const time = ({ atMs }: Plain) => (typeof atMs === 'number' ? atMs : Infinity);
  const a = time(one);
  const b = time(other);
  if (a !== b) return a < b ? -1 : 1;
  return (one.id as string) < (other.id as string) ? -1 : 1;
}

/** Where in a list something stands is nothing to choose between. */
function isOrder(parts: readonly string[]): boolean {
  return parts.at(-1) === 'order';
}

/** Whether verdicts follow from the value under a key: from names, notes, photos and what became of vehicles they do not. */
export function isJudged(parts: readonly string[]): boolean {
  if (isOrder(parts)) return false;
  if (parts[0] === 'track') return true;
  if (parts[0] !== 'surveyed') return false;
  const [of, , what] = parts.slice(2);
  switch (of) {
    case 'place':
      return true;
    case 'lines':
      return what !== 'name' && what !== 'path';
    case 'visits':
      return what !== 'by' && what !== 'note';
    default:
      return false;
  }
}

/** Of those, below one obstacle, the ones that concern more than the one ground that they stand in. */
function isJudgedHere(parts: readonly string[]): boolean {
  const inGround = parts[0] === 'visits' || (parts[0] === 'lines' && parts[2] === 'stretch');
  return !inGround && isJudged(['surveyed', '', ...parts]);
}
