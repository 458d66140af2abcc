/** Names of the three desks, and what stands around them. */
export const desks = {
  nav: 'Desks',
  scout: 'Scout',
  brief: 'Brief',
  archive: 'Archive',
};
