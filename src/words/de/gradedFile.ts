import type { Words } from '../words.ts';

export const gradedFile: Words['gradedFile'] = {
  theTrack: 'die Strecke',
  noGraded: 'Das ist keine bewertete Strecke.',
  noGradedDone: (format) => `In der Datei einer bewerteten Strecke steht "format": "${format}".`,
  version: (is, read) =>
    `Die Strecke hat die Version ${is ?? '(keine)'}; dieses Programm liest Version ${read}.`,
  noMoment: 'Nichts sagt, wann dieses Hindernis gemessen wurde.',
  noMomentDone: 'Sein Gelände wird behalten, als wäre es 1970 gemessen. Noch einmal messen.',
  noOutcome: 'Hier steht nicht, was gefahren ist, wann, oder wie es ausging.',
  noVerdict: 'Das ist kein Urteil.',
  noVerdictDone: 'Es zählt, als wäre nichts gesagt worden.',
  notMilliseconds: 'Das müssen Millisekunden seit 1970 sein.',
  notMillisecondsDone: 'Es ist nicht bekannt, wann das war.',
  tooLarge: 'Die Datei ist zu groß.',
  fewerTracks: 'Weniger Strecken auf einmal exportieren.',
  noCopies: 'Das ist keine Datei mit bewerteten Strecken.',
  noCopiesDone: (ending) => `Eine wählen, die auf ${ending} endet.`,
  otherVersion: 'Die Datei hat eine andere Version.',
  track: (which) => `Strecke ${which}`,
  endsEarly: 'Die Datei endet zu früh.',
  copyAgain: 'Noch einmal kopieren.',
  damaged: 'Diese Strecke ist beschädigt.',
  damagedDone: 'Sie wurde weggelassen. Die Datei noch einmal kopieren.',
};
