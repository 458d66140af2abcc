import type { Words } from '../words.ts';

export const agreement: Words['agreement'] = {
  head: 'Gesagt und getan',
  intro: 'Jeder Ausgang, den der Verein notierte, gegen das, was davon gesagt war.',
  reading: (done, of) => `${done} von ${of} Strecken gelesen …`,
  none: 'Noch keine Ausgänge',
  noneHelp:
    'Notiere am Tag, was jedes Fahrzeug an einem Hindernis tat. Dann trifft hier, was gesagt war, auf das, was geschah.',
  counts: 'Wie oft das Gesagte auf das Getane traf',
  saidHead: 'Gesagt',
  nothing: 'nichts',
  total: 'Alle',
  wrong: 'Hieß „fährt“, und fuhr nicht im Schritt',
  wrongNone: 'Nichts, was „fährt“ hieß, blieb stehen.',
  asSaid: 'Wie gesagt',
  easier: 'Schwerer als gesagt',
  harder: 'Leichter als gesagt',
  share: (count, of) => `${count} von ${of}`,
  between: (low, high) => `zwischen ${low} und ${high}, in 19 von 20 Fällen`,
  source:
    'Bereiche nach Wilson, Journal of the American Statistical Association 22, 1927, Seiten 209 bis 212.',
  wrongCaution:
    'Sieh dir jeden an: Boden, der sich seit dem Messen änderte, ein Fahrer neben der Spur oder ein Fehler dieses Programms.',
  adhesion: 'Kraftschluss, den die Ausgänge nahelegen',
  adhesionIntro: (spread) =>
    `Von Fahrzeugen, deren Urteil an der Traktion hing: Wer fuhr, hatte mindestens das Nötige, wer gezogen wurde oder umkehrte, weniger. Ein Versuch streut um ${spread} um seinen Boden.`,
  work: 'Ausrechnen',
  working: (done, of) => `${done} von ${of} Ausgängen ausgerechnet …`,
  stop: 'Anhalten',
  tooFew: (trials, least) => `${trials} Ausgänge: unter ${least} wird nichts gesagt`,
  ground: 'Boden',
  suggests: 'Nahegelegter größter Kraftschluss',
  rests: 'Beruht auf',
  printed: 'Tabellen sagen',
  estimate: (likely, low, high) => `${likely} (${low} bis ${high}, in 19 von 20 Fällen)`,
  atLeast: (low) => `mindestens ${low}`,
  atMost: (high) => `höchstens ${high}`,
  trials: (n, went) => `${n} Ausgänge, davon ${went} gefahren`,
  lower: 'rutschiger als gedruckt: nimm beim Messen den nächst rutschigeren Boden',
  higher: 'griffiger als gedruckt: Urteile bleiben bei den Tabellen',
  within: 'wie gedruckt',
  offered:
    'Das ist ein Angebot zum Nachdenken. Kein Urteil nimmt es auf, solange niemand per Druck Boden rutschiger annimmt, und dann nur in dieser Fahrt; besser macht es keinen Boden.',
  noneTells: 'Noch kein Ausgang hing an der Traktion.',
};
