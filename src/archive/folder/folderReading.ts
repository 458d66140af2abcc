import type { Problem, Reading } from '../../problem.ts';
import { readGpx } from '../../route/gpx.ts';
import type { Track } from '../../route/track.ts';
import { say } from '../../words/words.ts';
import type { Taken, TakeTracks } from '../filed.ts';
import { asTrip, gradedOfTrack, Handing } from '../filed.ts';
import { filedFromGeoJson } from '../geoJsonIn.ts';
import { gradedFrom } from '../gradedRecord.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { isTooLargeJson, kindOfJson, START_LENGTH } from '../jsonKind.ts';
import { ARCHIVE_LIMITS } from '../limits.ts';
import { hashOf } from '../publish/hash.ts';
import { printable, Reader } from '../reader.ts';
import { tripToJson } from '../share.ts';
import type { Trip } from '../trip.ts';
import { tripFrom } from '../tripRecord.ts';
import { stemOf } from './files.ts';

interface Recorded {
  readonly name: string;
  readonly stem: string;
  readonly tracks: readonly GradedTrack[];
  readonly problems: readonly Problem[];
}

/** What stood in a file of a trip, and what tells it from others. */
interface TripFile {
  readonly stem: string;
  readonly trip: Trip;
  readonly hash: string;
}

/** Is given files one by one, of GPX and JSON, and says what they hold together. */
export class FolderReading {
  readonly #tracks: Handing;
  readonly #reader = new Reader();
  #trips: TripFile[] = [];
  /** What stood in GPX, by the name of its file without its ending, and how many points more may. */
  #recorded: Recorded[] = [];
  #pointsLeft: number;
  readonly #mostTracks: number;
  /** Names under which a graded track stood, with what tells the trip written beside it; empty where it cannot be read. */
  readonly #whole = new Map<string, string>();
  readonly #ids = new Set<string>();

  constructor(
    take: TakeTracks,
    mostPoints: number = ARCHIVE_LIMITS.points,
    mostTracks: number = ARCHIVE_LIMITS.tracks,
  ) {
    this.#tracks = new Handing(take);
    this.#mostTracks = mostTracks;
    this.#pointsLeft = mostPoints;
  }

  get count(): number {
    return this.#tracks.count + this.#recorded.reduce((sum, { tracks }) => sum + tracks.length, 0);
  }

  error(where: string, what: string, done: string): void {
    this.#reader.error(printable(where), what, done);
  }

  async add(name: string, bytes: Uint8Array): Promise<void> {
    const base = name.slice(name.lastIndexOf('/') + 1);
    if (base.startsWith('.') || name.startsWith('__MACOSX/')) return;
    const stem = stemOf(name);
    if (this.count >= this.#mostTracks && !this.#isBesideOne(stem)) {
      this.error(name, say.formats.tooManyTracks(this.#mostTracks), say.formats.leftOut);
      return;
    }
    if (/\.gpx$/i.test(base)) await this.#addGpx(name, stem, bytes);
    else if (/\.(geo)?json$/i.test(base)) await this.#addJson(name, stem, bytes);
    else this.#reader.warning(printable(name), say.formats.zip.notRead, say.formats.leftOut);
    await this.#tracks.over();
  }

  /**
   * After the last file. One of GPX beside a graded track of the same name is that track, written for others; so is a trip
   * of that name in which nothing was changed since.
   */
  async answer(): Promise<Reading<Taken>> {
    for (const recorded of this.#recorded) {
      this.#told(recorded.name, recorded.problems);
      for (const graded of recorded.tracks) {
        if (this.#ids.has(graded.id)) continue;
        this.#ids.add(graded.id);
        this.#tracks.add(graded);
        await this.#tracks.over();
      }
    }
    await this.#tracks.over(true);
    if (this.#tracks.count === 0 && this.#trips.length === 0)
      this.error(say.formats.theFile, say.formats.noTracks, say.formats.nothingRead);
    return {
      value: { trackCount: this.#tracks.count, trips: this.#trips.map(({ trip }) => trip) },
      problems: this.#reader.problems(),
    };
  }

  async #addGpx(name: string, stem: string, bytes: Uint8Array): Promise<void> {
    if (this.#whole.has(stem)) return;
    const { value, problems } = await readGpx(bytes);
    const driven = (value?.tracks ?? []).filter(({ length }) => length > 1);
    const points = pointsOf(driven);
    if (points > this.#pointsLeft) {
      const { theFile, tooManyTracks, splitIt } = say.formats;
      const what = tooManyTracks(ARCHIVE_LIMITS.tracks);
      const problem: Problem = { severity: 'error', where: theFile, what, done: splitIt, times: 1 };
      this.#recorded.push({ name, stem, tracks: [], problems: [problem] });
      return;
    }
    this.#pointsLeft -= points;
    const tracks = driven.map((track, i) => {
      const waypoints = i === 0 ? (value?.waypoints ?? []) : [];
      const named = track.name === '' ? { ...track, name: printable(stem) } : track;
      return gradedOfTrack(named, waypoints);
    });
    this.#recorded.push({ name, stem, tracks, problems });
  }

  async #addJson(name: string, stem: string, bytes: Uint8Array): Promise<void> {
    const written = this.#whole.get(stem);
    if (written !== undefined && written === hashOf([bytes])) return;
    const start = new TextDecoder().decode(bytes.subarray(0, START_LENGTH));
    if (isTooLargeJson(start, bytes.length, ARCHIVE_LIMITS.featureBytes)) {
      this.error(
        name,
        say.formats.tooLarge(bytes.length, ARCHIVE_LIMITS.featureBytes),
        say.formats.geoJson.otherwise,
      );
      return;
    }
    let value: unknown;
    try {
      value = JSON.parse(new TextDecoder().decode(bytes));
    } catch {
      this.error(name, say.formats.noJson, say.formats.leftOut);
      return;
    }
    const kind = kindOfJson(value);
    if (kind === 'graded track') {
      const graded = gradedFrom(value);
      this.#whole.set(stem, graded.value === null ? '' : hashOfTrip(asTrip(graded.value)));
      this.#forget(stem);
      this.#addGraded(name, graded);
    } else if (kind === 'trip') {
      const trip = tripFrom(value);
      this.#told(name, trip.problems);
      if (trip.value) this.#trips.push({ stem, trip: trip.value, hash: hashOfTrip(trip.value) });
      if (this.#whole.has(stem)) this.#forget(stem);
    } else if (kind === 'GeoJSON') {
      const found = filedFromGeoJson(value, this.#pointsLeft);
      this.#told(name, found.problems);
      this.#pointsLeft -= pointsOf(found.value?.tracks.flatMap(({ track }) => track ?? []) ?? []);
      for (const graded of found.value?.tracks ?? []) {
        this.#addGraded(name, { value: graded, problems: [] });
        await this.#tracks.over();
      }
    } else this.#reader.warning(printable(name), say.formats.zip.notRead, say.formats.leftOut);
  }

  /** Whether a file of that name belongs to a track that is counted already. */
  #isBesideOne(stem: string): boolean {
    return this.#whole.has(stem) || this.#recorded.some((one) => one.stem === stem);
  }

  /** What is beside a whole track of the same name and was made of it. */
  #forget(stem: string): void {
    for (const { tracks } of this.#recorded.filter((one) => one.stem === stem))
      this.#pointsLeft += pointsOf(tracks.flatMap(({ track }) => track ?? []));
    this.#recorded = this.#recorded.filter((one) => one.stem !== stem);
    this.#trips = this.#trips.filter((one) => one.stem !== stem || one.hash !== this.#whole.get(stem));
  }

  #addGraded(name: string, { value, problems }: Reading<GradedTrack>): void {
    this.#told(name, problems);
    if (value !== null)
      this.#tracks.add({ ...value, id: this.#reader.id(value.id, printable(name), this.#ids, 'track') });
  }

  #told(name: string, problems: readonly Problem[]): void {
    this.#reader.add(
      problems.map((problem) => ({ ...problem, where: `${printable(name)}: ${problem.where}` })),
    );
  }
}

function hashOfTrip(trip: Trip): string {
  return hashOf([new TextEncoder().encode(tripToJson(trip))]);
}

function pointsOf(tracks: readonly Track[]): number {
  return tracks.reduce((sum, { length }) => sum + length, 0);
}
