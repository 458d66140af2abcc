/** What is wrong with a grid of heights, and classes of steepness. */
export const elevation = {
  notRead: 'No elevation grid was read.',
  needsRows: 'It must give ncols and nrows, whole numbers of at least 2.',
  tooMany: (most: number) => `More than ${most} heights. Cut the grid.`,
  needsCell: 'It must give a cellsize above 0.',
  notWgs84: 'The corner must be in degrees of WGS 84. Reproject the grid.',
  endsHere: 'The file ends here, or this is not a number.',
  restUnknown: 'The rest of the grid is taken as unknown.',
  unpackedTooLarge: 'Unpacked it would be too large. Cut the grid.',
  badGzip: 'Its gzip packing is damaged.',
  hgtName: (name: string) => `The name ${name} does not say where it lies; it must read like S34E088.hgt.`,
  hgtSize: 'Its size is not that of a one-degree tile (2,884,802 or 25,934,402 bytes).',
  over: (bound: string) => `over ${bound}`,
};
