import type { Element } from './elements.ts';
import {
  CMT,
  DESC,
  DOCUMENT,
  ELE,
  GPX,
  METADATA,
  NAME,
  OTHER,
  RTE,
  RTEPT,
  TIME,
  TRK,
  TRKPT,
  TRKSEG,
  WPT,
} from './elements.ts';
import type { Fault, FaultList } from './faults.ts';
import { FAULTS, Stop } from './faults.ts';
import type { ReadLimits } from './limits.ts';
import { BARE_AMPERSAND } from './mend.ts';
import { Points } from './points.ts';
import type { Recording, Track, Waypoint } from './track.ts';
import { decimal, hasZone, timeS } from './values.ts';
import type { XmlListener } from './xml.ts';

type Attributes = Readonly<Record<string, string>>;

/** Hears the elements of a GPX file one by one, and builds the recording of them. */
export class Recorder implements XmlListener {
  /** The line being read, set by whoever feeds this. */
  lineNow: () => number = () => 0;

  readonly #limits: ReadLimits;
  readonly #faults: FaultList;
  readonly #tracks: Track[] = [];
  readonly #waypoints: Waypoint[] = [];
  #recordingName = '';
  #pointCount = 0;

  /** The element at hand, and those around it, outermost first. */
  #place: Element = DOCUMENT;
  readonly #around: Element[] = [];
  /** The element whose text is being collected. */
  #collecting: Element | null = null;
  #text = '';

  /** Of the track, route or waypoint at hand. */
  #name = '';
  #description = '';
  #comment = '';
  readonly #points = new Points();
  #lastTimeS = NaN;

  /** Of the point at hand. */
  #usable = false;
  #lng = NaN;
  #lat = NaN;
  #elevationM = NaN;
  #elevationGiven = false;
  #timeS = NaN;

  constructor(limits: ReadLimits, faults: FaultList) {
    this.#limits = limits;
    this.#faults = faults;
  }

  /** What was recorded; null if that is not a single point. A track still open ends here. */
  take(): Recording | null {
    if (this.#points.length > 0)
      this.#endTrack([...this.#around, this.#place].includes(RTE) ? 'route' : 'track');
    const recording = { name: this.#recordingName, tracks: this.#tracks, waypoints: this.#waypoints };
    if (this.#tracks.length > 0) return recording;
    this.#faults.add(this.#waypoints.length > 0 ? FAULTS.noTrack : FAULTS.noPoints, 0);
    return this.#waypoints.length > 0 ? recording : null;
  }

  get awaitsPoint(): boolean {
    return this.#place === TRKSEG;
  }

  open(name: string, attributes: Attributes): boolean {
    const place = childOf(this.#place, name);
    this.#around.push(this.#place);
    this.#place = place;
    if (place.value !== 'none') {
      this.#collecting = place;
      this.#text = '';
    } else if (place === TRKPT || place === RTEPT || place === WPT) {
      this.#openPoint(attributes);
    } else if (place === TRK || place === RTE) {
      this.#openTrack();
    } else if (this.#around.length === 1) {
      this.#openRoot(name, attributes);
    }
    return this.#collecting !== null;
  }

  text(text: string): void {
    const collecting = this.#collecting;
    if (collecting === null || (collecting !== this.#place && collecting.value === 'number')) return;
    if (this.#text.length <= this.#limits.textLength) this.#text += text;
  }

  close(): boolean {
    const place = this.#place;
    switch (place) {
      case ELE:
        this.#takeElevation(this.#text);
        break;
      case TIME:
        this.#takeTime(this.#text);
        break;
      case NAME:
      case DESC:
      case CMT:
        this.#takeText(place, this.#around.at(-1)!);
        break;
      case TRKPT:
      case RTEPT:
        this.#endPoint();
        break;
      case WPT:
        this.#endWaypoint();
        break;
      case TRKSEG:
        this.#points.endSegment();
        break;
      case TRK:
        this.#endTrack('track');
        break;
      case RTE:
        this.#endTrack('route');
    }
    if (place === this.#collecting) this.#collecting = null;
    this.#place = this.#around.pop() ?? DOCUMENT;
    return this.#collecting === null;
  }

  #fault(fault: Fault, detail: string | number = ''): void {
    this.#faults.add(fault, this.lineNow(), this.#place.name, detail);
  }

  #openRoot(name: string, attributes: Attributes): void {
    if (this.#place !== GPX) {
      if (this.#pointCount > 0) return;
      throw new Stop(name.toLowerCase() === 'html' ? FAULTS.webPage : FAULTS.notGpx, name);
    }
    const { version, creator } = attributes;
    if (version === undefined) this.#fault(FAULTS.versionMissing);
    else if (version !== '1.1' && version !== '1.0') this.#fault(FAULTS.version, version);
    if (creator === undefined) this.#fault(FAULTS.creatorMissing);
  }

  #openTrack(): void {
    if (this.#tracks.length === this.#limits.tracks)
      throw new Stop(FAULTS.tooManyTracks, this.#limits.tracks);
    this.#forgetNames();
    this.#lastTimeS = NaN;
  }

  /** GPX 1.1 schema (Topografix, 2004): latitudeType [-90, 90], longitudeType [-180, 180). */
  #openPoint({ lat = '', lon = '' }: Attributes): void {
    this.#lat = decimal(lat);
    this.#lng = decimal(lon);
    this.#elevationM = NaN;
    this.#elevationGiven = false;
    this.#timeS = NaN;
    if (this.#place === WPT) this.#forgetNames();
    const known = !Number.isNaN(this.#lat) && !Number.isNaN(this.#lng);
    this.#usable = Math.abs(this.#lat) <= 90 && Math.abs(this.#lng) <= 180;
    if (!this.#usable) this.#fault(known ? FAULTS.positionOutOfRange : FAULTS.positionMissing);
    if (this.#lng === 180) {
      this.#lng = -180;
      this.#fault(FAULTS.longitude180);
    }
    if (++this.#pointCount > this.#limits.points) throw new Stop(FAULTS.tooManyPoints, this.#limits.points);
  }

  #takeElevation(text: string): void {
    const elevationM = decimal(text);
    if (Number.isNaN(elevationM) && text.trim() === '') return;
    if (this.#elevationGiven) {
      this.#fault(FAULTS.elevationTwice);
      return;
    }
    this.#elevationGiven = true;
    const { lowestM, highestM } = this.#limits;
    if (elevationM >= lowestM && elevationM <= highestM) this.#elevationM = elevationM;
    else if (Number.isNaN(elevationM)) this.#fault(FAULTS.elevationBad);
    else this.#fault(FAULTS.elevationOutOfRange, lowestM);
  }

  #takeTime(text: string): void {
    this.#timeS = timeS(text);
    if (!Number.isNaN(this.#timeS)) {
      if (!hasZone(text)) this.#fault(FAULTS.timeZoneMissing);
    } else if (text.trim() !== '') {
      this.#fault(FAULTS.timeBad);
    }
  }

  #takeText(place: Element, parent: Element): void {
    const text = this.#plainText();
    if (parent === GPX || parent === METADATA) this.#recordingName ||= oneLine(text);
    else if (place === NAME) this.#name = oneLine(text);
    else if (place === DESC) this.#description = text;
    else this.#comment = text;
  }

  #plainText(): string {
    const { textLength } = this.#limits;
    let text = this.#text;
    if (text.includes(BARE_AMPERSAND)) {
      this.#fault(FAULTS.bareAmpersand);
      text = text.replaceAll(BARE_AMPERSAND, '&');
    }
    if (text.includes('\uFFFD')) this.#fault(FAULTS.badCharacters);
    if (text.length > textLength) {
      this.#fault(FAULTS.textCut, textLength);
      text = text.slice(0, textLength);
    }
    return text.trim();
  }

  #endPoint(): void {
    if (!this.#usable) return;
    if (!this.#elevationGiven) this.#fault(FAULTS.elevationMissing);
    if (this.#timeS < this.#lastTimeS) this.#fault(FAULTS.timeBackwards);
    if (!Number.isNaN(this.#timeS)) this.#lastTimeS = this.#timeS;
    if (this.#points.repeatsLast(this.#lng, this.#lat, this.#elevationM, this.#timeS)) {
      this.#fault(FAULTS.duplicate);
    } else {
      this.#points.push(this.#lng, this.#lat, this.#elevationM, this.#timeS);
    }
  }

  #endWaypoint(): void {
    if (!this.#usable) return;
    this.#waypoints.push({
      name: this.#name,
      description: this.#descriptionAndComment(),
      lng: this.#lng,
      lat: this.#lat,
      elevationM: this.#elevationM,
    });
  }

  #endTrack(kind: Track['kind']): void {
    const { length } = this.#points;
    if (length === 0) {
      this.#fault(FAULTS.emptyTrack);
      return;
    }
    if (length === 1) this.#fault(FAULTS.singlePoint);
    if (this.#tracks.length === this.#limits.tracks)
      throw new Stop(FAULTS.tooManyTracks, this.#limits.tracks);
    this.#tracks.push(this.#points.take(kind, this.#name, this.#descriptionAndComment()));
  }

  #descriptionAndComment(): string {
    const texts = new Set([this.#description, this.#comment].filter((text) => text !== ''));
    return [...texts].join('\n');
  }

  #forgetNames(): void {
    this.#name = this.#description = this.#comment = '';
  }
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ');
}

/** The prefix of a namespace is nothing to us. */
function childOf({ children }: Element, name: string): Element {
  if (children.length === 0) return OTHER;
  for (let i = 0; i < children.length; i++) if (children[i].name === name) return children[i];
  const colon = name.indexOf(':');
  return (colon < 0 ? undefined : children.find((child) => child.name === name.slice(colon + 1))) ?? OTHER;
}
