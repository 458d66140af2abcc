import type { Trip } from '../../src/archive/trip.ts';
import { pointAt } from '../../src/route/station.ts';
import type { Recording } from '../../src/route/track.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Corridor, Line, Obstacle, Plane, Stretch } from '../../src/terrain/obstacle.ts';
import type { Answers } from '../../src/terrain/preset.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import type { Surface } from '../../src/terrain/surface.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleField, VehicleValues } from '../../src/vehicle/specs.ts';
import { vehicleFields } from '../../src/vehicle/specs.ts';
import type { Vehicle, VehicleClass } from '../../src/vehicle/vehicle.ts';

/** What was measured at one place of the invented track, beyond what its preset starts from. */
interface Pin {
  readonly name: string;
  readonly preset: string;
  readonly stationM: number;
  readonly answers: Answers;
  readonly plane?: Partial<Plane>;
  readonly surface?: Surface;
  readonly corridor: Partial<Corridor>;
  readonly more?: readonly Feature[];
  readonly offsetsM?: readonly number[];
  readonly bypass?: {
    readonly name: string;
    readonly plane: Plane;
    readonly surface: Surface;
    readonly aroundM: number;
  };
  readonly note: string;
}

const hole = (xM: number, yM: number, depthM: number, lengthM = 1.9): Feature => ({
  kind: 'hole',
  xM,
  yM,
  lengthM,
  widthM: 0.8,
  depthM,
});

const PINS: readonly Pin[] = [
  {
    name: 'First ford',
    preset: 'ford',
    stationM: 733,
    answers: { slopeRad: 0, depthM: 0.32, flowMps: 0.7, lengthM: 11 },
    plane: { slopeRad: 0, camberRad: rad(1) },
    corridor: { leftM: 3, leftBound: 'open', rightM: 2.4, rightBound: 'open', headroomM: 6 },
    note: 'Firm gravel. Depth changes overnight: measure it again.',
  },
  {
    name: 'Hobnail ruts',
    preset: 'rutted climb',
    stationM: 2095,
    answers: {
      slopeRad: rad(13),
      lengthM: 16,
      leftDepthM: 0.18,
      rightDepthM: 0.18,
      rutWidthM: 0.5,
      spacingM: 1.6,
    },
    plane: { camberRad: rad(6) },
    surface: { material: 'clay', condition: 'dry' },
    corridor: { leftM: 1.5, leftBound: 'bank', rightM: 1.75, rightBound: 'trees', headroomM: 5 },
    more: [hole(-2.9, 0.8, 0.3), hole(0, -0.8, 0.3), hole(2.9, 0.8, 0.3)],
    offsetsM: [0.5, -0.7],
    note: 'Holes in the ruts on alternate sides. Wide vehicles have nowhere to go.',
  },
  {
    name: 'Ladder holes',
    preset: 'cross-axle holes',
    stationM: 3565,
    answers: { slopeRad: rad(11), depthM: 0.34, holeLengthM: 2.1, apartM: 2.75, lengthM: 12 },
    corridor: { leftM: 1.7, leftBound: 'rock', rightM: 2.6, rightBound: 'open', headroomM: 6 },
    offsetsM: [-0.8],
    note: 'Room on the right only.',
  },
  {
    name: 'Anvil step',
    preset: 'ledge',
    stationM: 3800,
    answers: { slopeRad: rad(8), riseM: 0.17, faceRad: rad(70), skewRad: rad(8) },
    corridor: { leftM: 2, leftBound: 'rock', rightM: 2.2, rightBound: 'bank', headroomM: 8 },
    note: 'Sound rock. Square up to it.',
  },
  {
    name: 'Lantern traverse',
    preset: 'side slope',
    stationM: 4470,
    answers: { slopeRad: rad(3), camberRad: rad(11), lengthM: 35 },
    surface: { material: 'earth', condition: 'dry' },
    corridor: { leftM: 1.5, leftBound: 'bank', rightM: 1.9, rightBound: 'drop', headroomM: 8 },
    note: 'Leans to the right, towards the drop.',
  },
  {
    name: 'Ember drop',
    preset: 'ledge',
    stationM: 5390,
    answers: { slopeRad: rad(-18), riseM: -0.22, faceRad: rad(65), skewRad: 0 },
    surface: { material: 'rock', condition: 'dry' },
    corridor: { leftM: 2.1, leftBound: 'bank', rightM: 2.1, rightBound: 'bank', headroomM: 8 },
    note: 'Steepest way down. Low range before the edge.',
  },
  {
    name: 'Cinder pinch',
    preset: 'rocks',
    stationM: 6655,
    answers: { slopeRad: rad(21), heightM: 0.16, secondM: 0.14, lengthM: 12 },
    surface: { material: 'rock', condition: 'dry' },
    corridor: { leftM: 1.9, leftBound: 'rock', rightM: 2, rightBound: 'rock', headroomM: 8 },
    note: 'Short and steep; the track’s elevations see it as gentler than it is.',
  },
  {
    name: 'Washed ditch',
    preset: 'ditch',
    stationM: 7620,
    answers: { slopeRad: rad(-3), widthM: 2.6, depthM: 0.32, skewRad: rad(20) },
    corridor: { leftM: 2, leftBound: 'trees', rightM: 2.3, rightBound: 'trees', headroomM: 5 },
    bypass: {
      name: 'round the head of the ditch',
      plane: { slopeRad: rad(5), camberRad: rad(-5) },
      surface: { material: 'grass', condition: 'dry' },
      aroundM: 14,
    },
    note: 'Cut across the track at an angle by the last rain.',
  },
  {
    name: 'Second ford',
    preset: 'ford',
    stationM: 9590,
    answers: { slopeRad: rad(1), depthM: 0.48, flowMps: 0.5, lengthM: 14 },
    plane: { slopeRad: rad(1), camberRad: 0 },
    corridor: { leftM: 2.6, leftBound: 'open', rightM: 2.6, rightBound: 'open', headroomM: 6 },
    more: [{ kind: 'rock', xM: 1.5, yM: 0.7, heightM: 0.14, lengthM: 0.6, widthM: 0.5 }],
    note: 'Deeper than the first, cobbles on the bed.',
  },
  {
    name: 'Fallen pole',
    preset: 'log',
    stationM: 11_100,
    answers: { slopeRad: rad(5), diameterM: 0.13, skewRad: rad(12) },
    surface: { material: 'gravel', condition: 'dry' },
    corridor: { leftM: 1.8, leftBound: 'trees', rightM: 1.8, rightBound: 'trees', headroomM: 4.5 },
    note: 'Too heavy to move by hand.',
  },
  {
    name: 'Bellows bog',
    preset: 'soft ground',
    stationM: 12_230,
    answers: { slopeRad: rad(-2), coneIndexPa: 390e3, lengthM: 24 },
    corridor: { leftM: 3, leftBound: 'open', rightM: 3, rightBound: 'open', headroomM: 8 },
    note: 'Holds the first few; each one leaves it softer.',
  },
];

interface Member {
  readonly name: string;
  readonly driver: string;
  readonly vehicleClass: VehicleClass;
  readonly own: Partial<VehicleValues>;
}

const FRONT_AND_REAR = { frontDifferential: 'locker', rearDifferential: 'locker' } as const;

const CONVOY: readonly Member[] = [
  {
    name: 'Bracken',
    driver: 'Odile Farrow',
    vehicleClass: 'full-size wagon',
    own: { ...FRONT_AND_REAR, winchN: 42e3, ropeM: 28, straps: true, boards: true, roofLoadKg: 40 },
  },
  {
    name: 'Larkspur',
    driver: 'Col Amery',
    vehicleClass: 'all-wheel-drive soft-roader',
    own: {},
  },
  {
    name: 'Pebble',
    driver: 'Tam Quill',
    vehicleClass: 'compact 4x4',
    own: { massKg: 1240, straps: true },
  },
  {
    name: 'Harrier',
    driver: 'Ines Marl',
    vehicleClass: 'mid-size wagon',
    own: { brakeTraction: 'early', straps: true, boards: true },
  },
  {
    name: 'Oxbow',
    driver: 'Rufus Teale',
    vehicleClass: 'full-size wagon',
    own: { brakeTraction: 'none', roofLoadKg: 60 },
  },
  {
    name: 'Drover',
    driver: 'Petra Nunn',
    vehicleClass: 'dual-cab utility',
    own: { rearDifferential: 'locker', massKg: 2600, straps: true },
  },
];

/** The demonstration: an invented outing on the invented track. */
export function outing(recording: Recording): Trip {
  const track = recording.tracks[0];
  const pinned = PINS.map((pin, i): Obstacle => {
    const { lng, lat } = pointAt(track, pin.stationM);
    return {
      id: `obstacle-${i + 1}`,
      name: pin.name,
      preset: pin.preset,
      lng,
      lat,
      stationM: pin.stationM,
      stretch: stretchAt(pin),
      lines: linesAt(pin, lng, lat),
      note: pin.note,
      photos: [],
    };
  });
  return {
    id: 'demo',
    name: 'Ember Range, spring outing',
    note: 'Meet at Thimble Flat at 08:30. An invented place with invented people.',
    radioChannel: '12',
    direction: 'as recorded',
    track,
    waypoints: recording.waypoints,
    obstacles: pinned,
    heldGrips: [],
    vehicles: CONVOY.map(({ name, driver, vehicleClass, own }, i): Vehicle => ({
      id: `vehicle-${i + 1}`,
      name,
      driver,
      vehicleClass,
      values: { ...classValues(vehicleClass), ...own },
      estimated: (Object.keys(vehicleFields) as VehicleField[]).filter((field) => !(field in own)),
    })),
  };
}

function stretchAt(pin: Pin): Stretch {
  const preset = presetNamed(pin.preset);
  if (preset === undefined) throw new RangeError(`no preset is called ${pin.preset}`);
  const stretch = stretchFrom(preset, pin.answers);
  const more = pin.more ?? [];
  const hows = { ...stretch.hows };
  for (const side of ['leftM', 'rightM', 'headroomM']) hows[`corridor.${side}`] = 'taped';
  hows['plane.camberRad'] = 'taped';
  more.forEach((feature, i) => {
    for (const [size, value] of Object.entries(feature))
      if (typeof value === 'number') hows[`features.${stretch.features.length + i}.${size}`] = 'taped';
  });
  return {
    ...stretch,
    plane: { ...stretch.plane, ...pin.plane },
    surface: pin.surface ?? stretch.surface,
    corridor: { ...stretch.corridor, ...pin.corridor },
    features: [...stretch.features, ...more],
    hows,
  };
}

function linesAt(pin: Pin, lng: number, lat: number): Line[] {
  const lines: Line[] = [{ id: 'main', kind: 'main', name: 'main line', offsetM: 0 }];
  for (const offsetM of pin.offsetsM ?? [])
    lines.push({
      id: offsetM > 0 ? 'left' : 'right',
      kind: 'offset',
      name: offsetM > 0 ? 'offset left' : 'offset right',
      offsetM,
    });
  if (pin.bypass) {
    const { name, plane, surface, aroundM } = pin.bypass;
    const degreesPerM = 1 / 111_000;
    lines.push({
      id: 'bypass',
      kind: 'bypass',
      name,
      path: [
        [lng - 2 * aroundM * degreesPerM, lat],
        [lng - aroundM * degreesPerM, lat + aroundM * degreesPerM],
        [lng + aroundM * degreesPerM, lat + aroundM * degreesPerM],
        [lng + 2 * aroundM * degreesPerM, lat],
      ],
      stretch: {
        ...stretchAt(pin),
        plane,
        surface,
        features: [],
        corridor: { leftM: 2.2, leftBound: 'trees', rightM: 2.2, rightBound: 'trees', headroomM: 4.5 },
        hows: {
          'plane.slopeRad': 'taped',
          'plane.camberRad': 'taped',
          'corridor.leftM': 'paced',
          'corridor.rightM': 'paced',
        },
      },
    });
  }
  return lines;
}
