import type { Here } from '../map/subject.ts';
import type { Track } from '../route/track.ts';
import { nearestOn } from '../route/station.ts';
import type { System } from '../units.ts';
import { round, shown, written } from '../units.ts';
import { say } from '../words/words.ts';
import type { Hindrance } from './whereabouts.svelte.ts';

/** From here on a distance is said as one along a road is. */
const FAR_M = 1000;
/** What a screen reader says of the place is said anew no sooner than this. */
const SAY_EVERY_MS = 20_000;

/** What is known of the place of this device. */
export interface Known {
  readonly wanted: boolean;
  readonly here: Here | null;
  readonly ageMs: number;
  readonly hindrance: Hindrance | null;
}

/** Where someone is by the track, or by the earth where there is none, how well that is known, and if not, why; may be empty. */
export function whereaboutsText(known: Known, track: Track | null, system: System): string {
  const { wanted, here, ageMs, hindrance } = known;
  const words = say.map.here;
  const why = hindrance === null ? '' : hindranceText(hindrance);
  if (here === null) return why || (wanted ? words.looking : '');
  const place = placeText(here, track, system);
  return [here.isOld ? words.old(ageText(ageMs), place) : words.now(place), why].filter(Boolean).join(' ');
}

/** Such as `12 m from the track, 1.23 km along it, to within 5 m`. */
function placeText({ lng, lat, accuracyM }: Here, track: Track | null, system: System): string {
  const words = say.map.here;
  const accuracy = round(Math.ceil(accuracyM), 'length', system);
  if (track === null)
    return words.byEarth(`${written(lat.toFixed(5))}°, ${written(lng.toFixed(5))}°`, accuracy);
  const { acrossM, stationM } = nearestOn(track, lng, lat);
  const offM = Math.abs(acrossM);
  const off = offM < FAR_M ? round(offM, 'length', system) : shown(offM, 'distance', system);
  return words.byTrack(off, shown(stationM, 'distance', system), accuracy);
}

function hindranceText(hindrance: Hindrance): string {
  const words = say.map.here;
  switch (hindrance) {
    case 'refused':
      return words.refused;
    case 'no receiver':
      return words.noReceiver;
    case 'not told':
      return words.unknown(words.notTold);
    case 'too long':
      return words.unknown(words.tooLong);
  }
}

function ageText(ageMs: number): string {
  const seconds = Math.round(ageMs / 1000);
  return seconds < 60 ? say.map.here.seconds(seconds) : say.map.here.minutes(Math.floor(seconds / 60));
}

/** What was said of the place last, of which kind that was, and when, milliseconds. */
export interface Said {
  readonly text: string;
  readonly kind: string;
  readonly atMs: number;
}

/** What a screen reader says: at once what is of another kind (found, old, refused), a new place only now and then. */
export function saidOf(before: Said, { here, hindrance, wanted }: Known, text: string, nowMs: number): Said {
  const kind = `${wanted} ${hindrance} ${here === null ? 'none' : here.isOld ? 'old' : 'fresh'}`;
  const isDue = kind !== before.kind || (here?.isOld === false && nowMs - before.atMs >= SAY_EVERY_MS);
  return isDue ? { text, kind, atMs: nowMs } : before;
}
