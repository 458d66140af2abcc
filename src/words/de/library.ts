import type { Words } from '../words.ts';

export const library: Words['library'] = {
  missing: {
    what: 'Diese Strecke gibt es im Archiv dieses Geräts nicht.',
    done: 'Vielleicht wurde sie in einem anderen Fenster entfernt. Die Liste noch einmal ansehen.',
  },
  corrupt: {
    what: 'Die Geschichte dieser Strecke ist beschädigt und kann nicht gelesen werden.',
    done: 'Sie bleibt, wie sie ist. Speichere als Datei, was übrig ist. Nimm dann eine Kopie der Strecke auf (eine Datei zum Teilen, eine Sicherung oder vom Server des Vereins), die an ihre Stelle tritt.',
  },
  'changed elsewhere': {
    what: 'Die Strecke wurde geändert, seit danach gefragt wurde.',
    done: 'Jetzt wurde nichts geändert. Noch einmal ansehen, dann wählen.',
  },
  full: {
    what: 'Auf dem Gerät ist kein Platz mehr für diese Strecke.',
    done: 'Das Archiv enthält von ihr, was es vorher enthielt. Schaff Platz auf dem Gerät, dann tu dasselbe noch einmal.',
  },
  mended: {
    what: 'Die Geschichte dieser Strecke hier war nicht zu lesen.',
    done: 'Die Kopie, die kam, trat an ihre Stelle. Was nur der einfache Datensatz hier hatte, kam hinzu; wo beide etwas haben, gilt die Kopie.',
  },
  ownKept: {
    what: 'Die Datei sagt von dieser Strecke anderes als das Archiv.',
    done: 'Was dem Archiv fehlte, kam hinzu; im Übrigen blieb das Eigene.',
  },
};
