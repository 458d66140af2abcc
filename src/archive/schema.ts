import type { Field, FieldTable } from '../field.ts';
import { featureFields } from '../terrain/feature.ts';
import { heldGripFields } from '../terrain/heldGrip.ts';
import { HOWS } from '../terrain/measure.ts';
import { corridorFields, planeFields, stretchFields } from '../terrain/obstacle.ts';
import { surfaceFields } from '../terrain/surface.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import { VEHICLE_CLASSES } from '../vehicle/vehicle.ts';
import {
  elevationFields,
  hillsideFields,
  modelFields,
  offsetFields,
  placeFields,
  stationFields,
  trackFields,
  tripFields,
} from './fields.ts';
import { TRIP_LIMITS } from './limits.ts';
import { IMAGE_LENGTH, IMAGE_PATTERN } from './photoRecord.ts';
import { PATHS } from './stretchRecord.ts';
import { TRIP_FORMAT } from './tripRecord.ts';
import { TRIP_VERSION } from './upgrade.ts';

type Schema = Readonly<Record<string, unknown>>;

/**
 * The published description of a trip file, JSON Schema 2020-12, made from the tables that the program itself checks by.
 * What it cannot say (ids that differ, obstacles in order, values that contradict each other) `readTrip` checks as well.
 */
export function tripSchema(): Schema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Rutline trip',
    description:
      'One outing: a route, what lies in the way, and who goes. SI units, named in the last letters of a name (M metre, Kg kilogram, Rad radian, Pa pascal, N newton, S second); angles in radians; x along the recorded direction, y to the left, from the pin.',
    ...record(
      {
        format: { const: TRIP_FORMAT },
        version: { const: TRIP_VERSION },
        id: ID,
        name: TEXT,
        note: TEXT,
        ...fieldsOf(tripFields),
        track: orNull(ref('track')),
        waypoints: list(ref('waypoint'), TRIP_LIMITS.waypoints),
        obstacles: list(ref('obstacle'), TRIP_LIMITS.obstacles),
        heldGrips: {
          description: 'Kinds of ground that are held slipperier than printed, everywhere in the trip.',
          ...list(table(heldGripFields), TRIP_LIMITS.heldGrips),
        },
        vehicles: list(ref('vehicle'), TRIP_LIMITS.vehicles),
      },
      OPTIONAL,
    ),
    $defs: {
      track: track(),
      trackModel: trackModel(),
      waypoint: record({
        name: TEXT,
        description: TEXT,
        ...fieldsOf(placeFields),
        ...orNulls(fieldsOf(elevationFields)),
      }),
      obstacle: record({
        id: ID,
        name: TEXT,
        preset: TEXT,
        ...fieldsOf(placeFields),
        ...fieldsOf(stationFields),
        stretch: ref('stretch'),
        lines: {
          description: 'The main line first; at least one.',
          ...list(byKind(['offset', 'bypass']), TRIP_LIMITS.lines),
          prefixItems: [byKind(['main'])],
          minItems: 1,
        },
        note: TEXT,
        photos: list(ref('photo'), TRIP_LIMITS.photos),
      }),
      photo: record({
        id: ID,
        caption: { ...TEXT, description: 'What the photo shows; may be empty.' },
        image: {
          description: 'A whole JPEG, PNG or WebP file in base64.',
          type: 'string',
          contentEncoding: 'base64',
          pattern: IMAGE_PATTERN,
          maxLength: IMAGE_LENGTH,
        },
      }),
      stretch: record({
        ...fieldsOf(stretchFields),
        plane: record(orNulls(fieldsOf(planeFields))),
        surface: table(surfaceFields),
        corridor: table(corridorFields),
        features: list(byKind(Object.keys(featureFields)), TRIP_LIMITS.features),
        hows: hows(),
      }),
      main: record({ id: ID, kind: { const: 'main' }, name: TEXT, offsetM: { const: 0 } }),
      offset: record({ id: ID, kind: { const: 'offset' }, name: TEXT, ...fieldsOf(offsetFields) }),
      bypass: record({
        id: ID,
        kind: { const: 'bypass' },
        name: TEXT,
        stretch: ref('stretch'),
        path: list(
          {
            type: 'array',
            prefixItems: [fieldSchema(placeFields.lng), fieldSchema(placeFields.lat)],
            minItems: 2,
            maxItems: 2,
          },
          TRIP_LIMITS.path,
        ),
      }),
      ...Object.fromEntries(
        Object.entries(featureFields).map(([kind, fields]) => [
          kind,
          record({ kind: { const: kind }, ...fieldsOf(fields) }),
        ]),
      ),
      vehicle: record({
        id: ID,
        name: TEXT,
        driver: TEXT,
        vehicleClass: { enum: VEHICLE_CLASSES },
        values: table(vehicleFields),
        estimated: {
          description: "Values that are typical of the class, not this vehicle's own.",
          ...list({ enum: Object.keys(vehicleFields) }, Object.keys(vehicleFields).length),
          uniqueItems: true,
        },
      }),
    },
  };
}

/** What files of this version may leave out. */
const OPTIONAL = {
  radioChannel: {
    description: 'On which the convoy talks; absent or empty where none is agreed.',
    type: 'string',
    maxLength: TRIP_LIMITS.radioLength,
  },
};

const ID: Schema = { type: 'string', minLength: 1, maxLength: TRIP_LIMITS.idLength };

const TEXT: Schema = { type: 'string', maxLength: TRIP_LIMITS.textLength };

function column(items: Schema, description: string): Schema {
  return { description, ...list(items, TRIP_LIMITS.points), minItems: 1 };
}

function track(): Schema {
  return record({
    name: TEXT,
    description: TEXT,
    ...fieldsOf(trackFields),
    lng: column(fieldSchema(placeFields.lng), 'One entry a point, as many as in the other columns.'),
    lat: column(fieldSchema(placeFields.lat), 'One entry a point.'),
    elevationM: column(orNull(fieldSchema(elevationFields.elevationM)), 'One entry a point.'),
    timeS: column(
      orNull({ type: 'number' }),
      'One entry a point: seconds since 1970-01-01T00:00:00Z; null where unknown.',
    ),
    segmentStart: column(
      { type: 'integer', minimum: 0 },
      'Index of the first point of each recorded segment, ascending from 0; a gap lies before all but the first.',
    ),
    model: {
      description: 'What an elevation model says along the track; null where none was laid along it.',
      ...orNull(ref('trackModel')),
    },
  });
}

function trackModel(): Schema {
  return record({
    name: { ...TEXT, description: 'Name of the file that it was read off.' },
    ...fieldsOf(modelFields),
    elevationM: column(orNull(fieldSchema(elevationFields.elevationM)), 'One entry a point of the track.'),
    camberRad: column(orNull(fieldSchema(hillsideFields.camberRad)), 'One entry a point of the track.'),
  });
}

function hows(): Schema {
  const paths = [...PATHS.map((path) => path.replace('.', '\\.')), 'features\\.\\d+\\.[A-Za-z]+'];
  return {
    description:
      'How values were got, by their path in the stretch; a value that is absent was judged by eye.',
    type: 'object',
    propertyNames: { pattern: `^(${paths.join('|')})$` },
    additionalProperties: { enum: HOWS },
  };
}

/** A record with just these members, all of them required but the `optional`. */
function record(
  properties: Readonly<Record<string, Schema>>,
  optional: Readonly<Record<string, Schema>> = {},
): Schema {
  return {
    type: 'object',
    properties: { ...properties, ...optional },
    required: Object.keys(properties),
    additionalProperties: false,
  };
}

function table(fields: FieldTable): Schema {
  return record(fieldsOf(fields));
}

function fieldsOf(fields: FieldTable): Record<string, Schema> {
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, fieldSchema(field)]));
}

function fieldSchema(field: Field): Schema {
  const description = `${field.label}. ${field.sentence}`;
  switch (field.kind) {
    case 'number':
      return { description, type: 'number', minimum: field.min, maximum: field.max };
    case 'choice':
      return { description, enum: field.choices };
    case 'flag':
      return { description, type: 'boolean' };
  }
}

/** One of several records that are told apart by `kind`; what is wrong is then said of that kind alone. */
function byKind(kinds: readonly string[]): Schema {
  return {
    type: 'object',
    required: ['kind'],
    properties: { kind: { enum: kinds } },
    allOf: kinds.map((kind) => ({
      if: { properties: { kind: { const: kind } }, required: ['kind'] },
      then: ref(kind),
    })),
  };
}

function list(items: Schema, maxItems: number): Schema {
  return { type: 'array', items, maxItems };
}

function orNull(schema: Schema): Schema {
  return typeof schema.type === 'string'
    ? { ...schema, type: [schema.type, 'null'] }
    : { anyOf: [schema, { type: 'null' }] };
}

function orNulls(schemas: Readonly<Record<string, Schema>>): Record<string, Schema> {
  return Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, orNull(schema)]));
}

function ref(name: string): Schema {
  return { $ref: `#/$defs/${name}` };
}
