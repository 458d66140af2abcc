import { cards } from './cards.ts';
import { causes } from './causes.ts';
import { cautions } from './cautions.ts';
import { desks } from './desks.ts';
import { drawing } from './drawing.ts';
import { driving } from './driving.ts';
import { elevation } from './elevation.ts';
import { exports } from './exports.ts';
import { fields } from './fields.ts';
import { gpx } from './gpx.ts';
import { gradedFile } from './gradedFile.ts';
import { ground } from './ground.ts';
import { groundChecks } from './groundChecks.ts';
import { margins } from './margins.ts';
import { names } from './names.ts';
import { archiveDesk } from './archiveDesk.ts';
import { bench } from './bench.ts';
import { briefDesk } from './briefDesk.ts';
import { entry } from './entry.ts';
import { files } from './files.ts';
import { formats } from './formats.ts';
import { grading } from './grading.ts';
import { header } from './header.ts';
import { heldGrip } from './heldGrip.ts';
import { library } from './library.ts';
import { lines } from './lines.ts';
import { map } from './map.ts';
import { matrix } from './matrix.ts';
import { notices } from './notices.ts';
import { obstacle } from './obstacle.ts';
import { order } from './order.ts';
import { phoneReading } from './phoneReading.ts';
import { photos } from './photos.ts';
import { presets } from './presets.ts';
import { privacy } from './privacy.ts';
import { problem } from './problem.ts';
import { recovery } from './recovery.ts';
import { scout } from './scout.ts';
import { sheet } from './sheet.ts';
import { sources } from './sources.ts';
import { storage } from './storage.ts';
import { store } from './store.ts';
import { terrainFields } from './terrainFields.ts';
import { track } from './track.ts';
import { trackModel } from './trackModel.ts';
import { tripFields } from './tripFields.ts';
import { tripFile } from './tripFile.ts';
import { units } from './units.ts';
import { vehicleFields } from './vehicleFields.ts';
import { vehicles } from './vehicles.ts';
import { condition } from './condition.ts';
import { whatIf } from './whatIf.ts';
import { gradedTracks } from './gradedTracks.ts';
import { outcomes } from './outcomes.ts';
import { agreement } from './agreement.ts';
import { clubServer } from './clubServer.ts';
import { published } from './published.ts';

/** Every text in English, section by section. */
export const en = {
  ...names,
  sources,
  exports,
  gradedFile,
  groundChecks,
  tripFile,
  store,
  elevation,
  problem,
  gpx,
  drawing,
  cards,
  sheet,
  driving,
  ground,
  margins,
  cautions,
  recovery,
  order,
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
  heldGrip,
  library,
  lines,
  map,
  matrix,
  notices,
  obstacle,
  phoneReading,
  photos,
  privacy,
  scout,
  storage,
  track,
  trackModel,
  vehicles,
  condition,
  gradedTracks,
  outcomes,
  agreement,
  clubServer,
  published,
};
