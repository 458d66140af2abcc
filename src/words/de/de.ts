import type { Words } from '../words.ts';
import { causes } from './causes.ts';
import { desks } from './desks.ts';
import { fields } from './fields.ts';
import { names } from './names.ts';
import { archiveDesk } from './archiveDesk.ts';
import { bench } from './bench.ts';
import { briefDesk } from './briefDesk.ts';
import { entry } from './entry.ts';
import { files } from './files.ts';
import { formats } from './formats.ts';
import { grading } from './grading.ts';
import { header } from './header.ts';
import { lines } from './lines.ts';
import { map } from './map.ts';
import { matrix } from './matrix.ts';
import { notices } from './notices.ts';
import { obstacle } from './obstacle.ts';
import { phoneReading } from './phoneReading.ts';
import { photos } from './photos.ts';
import { presets } from './presets.ts';
import { scout } from './scout.ts';
import { terrainFields } from './terrainFields.ts';
import { track } from './track.ts';
import { tripFields } from './tripFields.ts';
import { units } from './units.ts';
import { vehicleFields } from './vehicleFields.ts';
import { vehicles } from './vehicles.ts';
import { condition } from './condition.ts';
import { whatIf } from './whatIf.ts';

/** Every text in German. */
export const de: Words = {
  ...names,
  whatIf,
  causes,
  presets,
  tripFields,
  terrainFields,
  vehicleFields,
  fields,
  units,
  desks,
  archiveDesk,
  bench,
  briefDesk,
  entry,
  files,
  formats,
  grading,
  header,
  lines,
  map,
  matrix,
  notices,
  obstacle,
  phoneReading,
  photos,
  scout,
  track,
  vehicles,
  condition,
};
