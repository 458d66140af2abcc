/** How far a vehicle is from a limit, and what it takes. */
export const margins = {
  justShort: 'just short',
  justEnough: 'just enough',
  short: (size: string) => `short by ${size}`,
  spare: (size: string) => `${size} spare`,
  maybe: (margin: string) => `may be ${margin}`,
  asEntered: (margin: string) => `${margin} as entered`,
  atWorst: (margin: string) => `${margin} at worst`,
  ofWeight: (share: string) => `${share} of its weight`,
  nearest: (check: string) => `nearest limit: ${check}`,
  enterAt: (speed: string) => `enter at ${speed} at least`,
  atLeast: (speed: string) => `${speed} at least`,
  lacks: (force: string) => `lacks ${force} at worst; the pull itself takes more`,
  outOfHundred: (many: number) => `${many} of 100`,
};
