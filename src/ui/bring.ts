/** Where sheets stand below each other. */
const PHONE = '(max-width: 1000px)';

/** On a phone, brings a sheet that has just opened onto the screen. */
export function bringOnPhone(sheet: HTMLElement | undefined): void {
  if (matchMedia(PHONE).matches) sheet?.scrollIntoView({ block: 'start' });
}

/** Elsewhere a sheet takes room from what stands beside it: keeps in sight what it was opened for. */
export function keepBeside(chosen: Element | null | undefined): void {
  if (!matchMedia(PHONE).matches) chosen?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

/** Once a sheet has closed: back to the link that had opened it. */
export function returnTo(opener: HTMLElement | null | undefined): void {
  opener?.focus({ preventScroll: true });
  opener?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}
