import type { ClassificationId, Season } from '../grade/classification.ts';
import { CLASSIFICATIONS, SEASONS } from '../grade/classification.ts';
import type { How } from '../terrain/measure.ts';
import { HOWS } from '../terrain/measure.ts';
import type { System } from '../units.ts';

export const SCHEMES = ['day', 'sun', 'night'] as const;

export type Scheme = (typeof SCHEMES)[number];

const SYSTEMS = ['metric', 'imperial'] as const;

/** How this person on this device wants to see and enter things; kept apart from the trip. */
class Look {
  #system = $state.raw<System>(kept('system', SYSTEMS, 'metric'));
  #scheme = $state.raw<Scheme>(kept('scheme', SCHEMES, 'day'));
  #measuringBy = $state.raw<How>(kept('measuringBy', HOWS, 'by eye'));
  #classification = $state.raw<ClassificationId>(kept('classification', CLASSIFICATIONS, 'australia'));
  #season = $state.raw<Season>(kept('season', SEASONS, 'dry'));

  constructor() {
    document.documentElement.dataset.scheme = this.#scheme;
  }

  get system(): System {
    return this.#system;
  }

  set system(system: System) {
    this.#system = system;
    keep('system', system);
  }

  get scheme(): Scheme {
    return this.#scheme;
  }

  set scheme(scheme: Scheme) {
    this.#scheme = scheme;
    document.documentElement.dataset.scheme = scheme;
    keep('scheme', scheme);
  }

  /** How the values typed from now on are got. */
  get measuringBy(): How {
    return this.#measuringBy;
  }

  set measuringBy(how: How) {
    this.#measuringBy = how;
    keep('measuringBy', how);
  }

  /** By whose words grades are told. */
  get classification(): ClassificationId {
    return this.#classification;
  }

  set classification(classification: ClassificationId) {
    this.#classification = classification;
    keep('classification', classification);
  }

  /** The ground that grades are told for. */
  get season(): Season {
    return this.#season;
  }

  set season(season: Season) {
    this.#season = season;
    keep('season', season);
  }
}

function kept<T extends string>(name: string, allowed: readonly T[], usual: T): T {
  try {
    const value = localStorage.getItem(`rutline.${name}`) as T | null;
    return value !== null && allowed.includes(value) ? value : usual;
  } catch {
    return usual;
  }
}

/** A device that keeps nothing (private window) still works; it only forgets. */
function keep(name: string, value: string): void {
  try {
    localStorage.setItem(`rutline.${name}`, value);
  } catch {
    return;
  }
}

export const look = new Look();
