import { pointAt } from '../src/route/station.ts';
import type { Trip } from '../src/archive/trip.ts';

const OBSTACLES = [
  'Feuerwehrgerätehauszufahrt',
  'Steiler Abstieg am Wasserfallwanderweg',
  'The washed-out corner below the old timber mill',
  'Bachdurchfahrt unter der Eisenbahnbrücke',
  'Whispering Gums, lower gate',
  'Querrinnen',
  'Kalkofenstufe',
  'Where the grader turned round',
  'Doppelte Verschränkungsmulden',
  'Tipping point',
  'Mooswiese',
  'Misunderstanding Hill',
  'Altholzsperre hinter dem Schießstand',
  'Nine Mile',
] as const;

const VEHICLES = [
  'Großmutters Rübenwagen',
  'Thunderstruck',
  'Donnerstagsfahrer',
  'The Immovable Object',
  'Schneckenkönig',
  'Blue',
] as const;

/** The demo's trip grown to a full day: 12 vehicles and 25 obstacles, each of its own place and name, some of them long. */
export function fullConvoy(demo: Trip): Trip {
  const track = demo.track!;
  const lengthM = track.distanceM[track.length - 1];
  const more = OBSTACLES.map((name, i) => {
    const from = demo.obstacles[i % demo.obstacles.length];
    const stationM = ((i + 0.5) / OBSTACLES.length) * lengthM;
    const { lng, lat } = pointAt(track, stationM);
    return { ...from, id: `more-${i + 1}`, name, stationM, lng, lat };
  });
  return {
    ...demo,
    name: 'Herbstausfahrt of the two clubs, Ember Range and Schwarzwasser',
    obstacles: [...demo.obstacles, ...more].toSorted((a, b) => a.stationM - b.stationM),
    vehicles: [
      ...demo.vehicles,
      ...VEHICLES.map((name, i) => ({
        ...demo.vehicles[i],
        id: `more-${i + 1}`,
        name,
        driver: i % 2 === 0 ? 'Annegret Wintersberger-Holm' : 'Bartholomew Featherstone',
      })),
    ],
  };
}
