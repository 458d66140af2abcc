import type { Words } from '../words.ts';

export const elevation: Words['elevation'] = {
  notRead: 'Kein Höhenraster wurde gelesen.',
  needsRows: 'Er muss ncols und nrows angeben, ganze Zahlen von mindestens 2.',
  tooMany: (most) => `Mehr als ${most} Höhen. Das Raster zuschneiden.`,
  needsCell: 'Er muss eine cellsize über 0 angeben.',
  notWgs84: 'Die Ecke muss in Grad von WGS 84 angegeben sein. Das Raster umprojizieren.',
  endsHere: 'Die Datei endet hier, oder das ist keine Zahl.',
  restUnknown: 'Der Rest des Rasters gilt als nicht bekannt.',
  unpackedTooLarge: 'Entpackt wäre sie zu groß. Das Raster zuschneiden.',
  badGzip: 'Ihre gzip-Packung ist beschädigt.',
  hgtName: (name) => `Der Name ${name} sagt nicht, wo es liegt; er muss so aussehen: S34E088.hgt.`,
  hgtSize: 'Die Größe ist nicht die einer Ein-Grad-Kachel (2.884.802 oder 25.934.402 Bytes).',
  over: (bound) => `über ${bound}`,
};
