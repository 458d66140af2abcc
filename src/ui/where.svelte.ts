import type { Place } from './place.ts';
import { addressOf, placeOf } from './place.ts';

/** The place on screen, in step with the address bar. */
class Where {
  place = $state.raw<Place>(placeOf(location.hash));

  constructor() {
    addEventListener('hashchange', () => (this.place = placeOf(location.hash)));
  }

  go(place: Place): void {
    location.hash = addressOf(place);
    this.place = place;
  }

  /** As `go`, without a step for the browser's back: for a place that has just gone. */
  replace(place: Place): void {
    history.replaceState(null, '', addressOf(place));
    this.place = place;
  }
}

export const where = new Where();
