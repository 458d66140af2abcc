import type { Words } from '../words.ts';

export const entry: Words['entry'] = {
  holds: 'Stimmt',
  estimate: 'Schätzwert',
  yes: 'ja',
  no: 'nein',
  howGot: (title) => `Wie ermittelt: ${title}`,
  turnSign: (label) => `Vorzeichen umkehren: ${label}`,
  range: (from, to) => `${from} bis ${to}`,
  empty: (label, range) => `${label} ist leer. ${range} eingeben.`,
  noNumber: (text, example) => `„${text}“ ist keine Zahl. So schreiben: ${example}.`,
  otherUnit: (fault) => `${fault} War eine andere Einheit gemeint?`,
  atPin: 'am Pin',
  beforePin: (distance) => `${distance} vor dem Pin`,
  pastPin: (distance) => `${distance} hinter dem Pin`,
  change: (label) => `${label} ändern`,
  changeHow: (label) => `ändern, wie ermittelt: ${label}`,
  confirm: (label) => `${label} bestätigen`,
};
