/** On a phone, where sheets stand below each other, brings a sheet that has just opened onto the screen. */
export function bringOnPhone(sheet: HTMLElement | undefined): void {
  if (matchMedia('(max-width: 1000px)').matches) sheet?.scrollIntoView({ block: 'start' });
}
