/** The inks of the program's style sheet (`--paper`, `--ink`, …), for a library that knows no custom properties. */
const TOKENS = {
  paper: '--paper',
  sheet: '--sheet',
  ink: '--ink',
  soft: '--ink-soft',
  rule: '--rule',
  ruleStrong: '--rule-strong',
  accent: '--accent',
  hatch: '--hatch',
  water: '--water',
} as const;

export type Scheme = 'day' | 'sun' | 'night';

export type Inks = Readonly<Record<keyof typeof TOKENS, string>> & { readonly scheme: Scheme };

/** The inks as they stand on an element now. */
export function inksOf(element: Element, scheme: Scheme): Inks {
  const style = getComputedStyle(element);
  const colours = Object.fromEntries(
    Object.entries(TOKENS).map(([name, token]) => [name, style.getPropertyValue(token).trim() || 'black']),
  );
  return { ...colours, scheme } as Inks;
}
