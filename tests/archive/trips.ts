import fc from 'fast-check';
import type { Trip } from '../../src/archive/trip.ts';
import type { Field, FieldTable, Values } from '../../src/field.ts';
import { Points } from '../../src/route/points.ts';
import type { Track, TrackModel } from '../../src/route/track.ts';
import { checkStretch } from '../../src/terrain/check.ts';
import type { Feature, FeatureKind } from '../../src/terrain/feature.ts';
import { featureFields } from '../../src/terrain/feature.ts';
import { heldGripFields } from '../../src/terrain/heldGrip.ts';
import type { How } from '../../src/terrain/measure.ts';
import { HOWS } from '../../src/terrain/measure.ts';
import type { Line, Obstacle, Stretch } from '../../src/terrain/obstacle.ts';
import { corridorFields, planeFields, stretchFields } from '../../src/terrain/obstacle.ts';
import { bareImage } from '../../src/terrain/bareImage.ts';
import type { Photo } from '../../src/terrain/photo.ts';
import { surfaceFields } from '../../src/terrain/surface.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleField } from '../../src/vehicle/specs.ts';
import { vehicleFields } from '../../src/vehicle/specs.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

/** Any trip without a fault: every shape, kind of line and class, known and unknown values. */
export function anyTrip(): fc.Arbitrary<Trip> {
  return fc
    .record({
      id: fc.uuid(),
      name: fc.string({ unit: 'grapheme' }),
      note: fc.string({ unit: 'grapheme' }),
      radioChannel: fc.string({ maxLength: 60 }),
      direction: fc.constantFrom('as recorded' as const, 'reversed' as const),
      track: fc.option(anyTrack()),
      waypoints: fc.array(
        fc.record({
          name: fc.string(),
          description: fc.string(),
          lng: between(-180, 179.9),
          lat: between(-90, 90),
          elevationM: unknownOr(between(-500, 9000)),
        }),
        { maxLength: 3 },
      ),
      obstacles: fc.uniqueArray(anyObstacle(), { maxLength: 4, selector: ({ id }) => id }),
      heldGrips: fc.array(valuesOf(heldGripFields), { maxLength: 2 }),
      vehicles: fc.uniqueArray(anyVehicle(), { maxLength: 3, selector: ({ id }) => id }),
    })
    .map((trip) => ({ ...trip, obstacles: alongTrack(trip.obstacles, trip.track) }));
}

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true }).map((value) => value + 0);
}

function unknownOr(known: fc.Arbitrary<number>): fc.Arbitrary<number> {
  return fc.oneof({ weight: 4, arbitrary: known }, { weight: 1, arbitrary: fc.constant(NaN) });
}

function valueOf(field: Field): fc.Arbitrary<unknown> {
  switch (field.kind) {
    case 'number':
      return between(field.min, field.max);
    case 'choice':
      return fc.constantFrom(...field.choices);
    case 'flag':
      return fc.boolean();
  }
}

function valuesOf<T extends FieldTable>(fields: T): fc.Arbitrary<Values<T>> {
  const model = Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, valueOf(field)]));
  return fc.record(model) as fc.Arbitrary<Values<T>>;
}

function anyTrack(): fc.Arbitrary<Track> {
  const point = fc.tuple(
    between(-1, 1),
    between(44, 46),
    unknownOr(between(-500, 9000)),
    unknownOr(between(0, 2e9)),
  );
  return fc
    .record({
      name: fc.string(),
      description: fc.string(),
      kind: fc.constantFrom('track' as const, 'route' as const),
      segments: fc.array(fc.array(point, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 3 }),
      model: fc.option(anyModel()),
    })
    .map(({ name, description, kind, segments, model }) => {
      const points = new Points();
      for (const segment of segments) {
        points.endSegment();
        segment.forEach((fix) => points.push(...fix));
      }
      const { length } = points;
      const track = points.take(kind, name, description);
      return { ...track, model: model && cut(model, length) };
    });
}

/** What a model says along a track of up to fifteen points. */
function anyModel(): fc.Arbitrary<TrackModel> {
  const column = (value: fc.Arbitrary<number>) =>
    fc.array(value, { minLength: 15, maxLength: 15 }).map((values) => Float64Array.from(values));
  return fc.record({
    name: fc.string(),
    nodeM: between(0.01, 1000),
    errorM: between(0.01, 100),
    elevationM: column(unknownOr(between(-500, 9000))),
    camberRad: column(unknownOr(between(-1.5, 1.5))),
    isUsed: fc.boolean(),
  });
}

function cut({ elevationM, camberRad, ...said }: TrackModel, length: number): TrackModel {
  return { ...said, elevationM: elevationM.slice(0, length), camberRad: camberRad.slice(0, length) };
}

function anyFeature(): fc.Arbitrary<Feature> {
  return fc
    .constantFrom(...(Object.keys(featureFields) as FeatureKind[]))
    .chain((kind) => valuesOf(featureFields[kind]).map((values) => ({ kind, ...values }) as Feature));
}

function anyStretch(): fc.Arbitrary<Stretch> {
  return fc
    .record({
      lengthM: valueOf(stretchFields.lengthM) as fc.Arbitrary<number>,
      plane: fc.record({
        slopeRad: fc.option(between(planeFields.slopeRad.min, planeFields.slopeRad.max)),
        camberRad: fc.option(between(planeFields.camberRad.min, planeFields.camberRad.max)),
      }),
      surface: valuesOf(surfaceFields),
      corridor: valuesOf(corridorFields),
      features: fc.array(anyFeature(), { maxLength: 12 }),
      how: fc.constantFrom(...HOWS),
    })
    .map(({ how, ...ground }) => {
      const possible = (feature: Feature) =>
        checkStretch({ ...ground, features: [feature], hows: {} }, '').length === 0;
      const features = ground.features.filter(possible);
      const hows: Record<string, How> = { lengthM: how, 'corridor.leftM': 'taped' };
      features.forEach((feature, i) => {
        hows[`features.${i}.${Object.keys(featureFields[feature.kind])[0]}`] = how;
      });
      return { ...ground, features, hows };
    });
}

function anyLines(): fc.Arbitrary<Line[]> {
  const main = fc.record({ name: fc.string() }).map(({ name }): Line => ({
    id: 'main',
    kind: 'main',
    name,
    offsetM: 0,
  }));
  const other: fc.Arbitrary<Line> = fc.oneof(
    fc.record({
      id: fc.uuid(),
      kind: fc.constant('offset' as const),
      name: fc.string(),
      offsetM: between(-5, 5),
    }),
    fc.record({
      id: fc.uuid(),
      kind: fc.constant('bypass' as const),
      name: fc.string(),
      stretch: anyStretch(),
      path: fc.array(fc.tuple(between(-180, 180), between(-90, 90)), { maxLength: 3 }),
    }),
  );
  const others = fc.uniqueArray(other, { maxLength: 2, selector: ({ id }) => id });
  return fc.tuple(main, others).map(([first, rest]) => [first, ...rest]);
}

function anyObstacle(): fc.Arbitrary<Obstacle> {
  const obstacle = fc.record({
    id: fc.uuid(),
    name: fc.string(),
    preset: fc.string(),
    lng: between(-1, 1),
    lat: between(44, 46),
    stationM: between(0, 1e6),
    stretch: anyStretch(),
    lines: anyLines(),
    note: fc.string(),
    photos: fc.array(anyPhoto(), { maxLength: 2 }),
  });
  return obstacle.map(({ photos, ...rest }) => ({
    ...rest,
    photos: photos.map((photo, i) => ({ id: `${rest.id}-${i}`, ...photo })),
  }));
}

/** The first bytes of a JPEG, a PNG and a WebP file, and anything after them that a picture keeps. */
function anyPhoto(): fc.Arbitrary<Omit<Photo, 'id'>> {
  const heads = [
    [0xff, 0xd8, 0xff],
    [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0x00],
    [0x52, 0x49, 0x46, 0x46, 1, 2, 3, 4, 0x57, 0x45, 0x42, 0x50],
  ];
  return fc.record({
    caption: fc.string(),
    image: fc
      .tuple(fc.constantFrom(...heads), fc.uint8Array({ maxLength: 40 }))
      .map(([head, rest]) => bareImage(Uint8Array.from([...head, ...rest]))),
  });
}

function alongTrack(obstacles: readonly Obstacle[], track: Track | null): Obstacle[] {
  const lengthM = track ? track.distanceM[track.length - 1] : 1e6;
  return obstacles
    .map((obstacle) => ({ ...obstacle, stationM: Math.min(obstacle.stationM, lengthM) }))
    .sort((a, b) => a.stationM - b.stationM);
}

function anyVehicle(): fc.Arbitrary<Vehicle> {
  return fc.record({
    id: fc.uuid(),
    name: fc.string(),
    driver: fc.string(),
    vehicleClass: fc.constantFrom(...VEHICLE_CLASSES),
    values: fc
      .tuple(fc.constantFrom(...VEHICLE_CLASSES), between(600, 6000), between(0.3, 0.7), fc.boolean())
      .map(([vehicleClass, massKg, frontShare, straps]) => ({
        ...classValues(vehicleClass),
        massKg,
        frontShare,
        straps,
      })),
    estimated: fc.uniqueArray(fc.constantFrom(...(Object.keys(vehicleFields) as VehicleField[])), {
      maxLength: 5,
    }),
  });
}
