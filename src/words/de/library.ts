import type { Words } from '../words.ts';

export const library: Words['library'] = {
  missing: {
    what: 'Diese Strecke gibt es im Archiv dieses Geräts nicht.',
    done: 'Vielleicht wurde sie in einem anderen Fenster entfernt. Die Liste noch einmal ansehen.',
  },
  corrupt: {
    what: 'Die Geschichte dieser Strecke ist beschädigt und kann nicht gelesen werden.',
    done: 'Sie bleibt, wie sie ist. Die Strecke aus einer Datei oder von einem anderen Gerät unter anderem Namen neu hereinholen.',
  },
  'changed elsewhere': {
    what: 'Die Strecke wurde geändert, seit danach gefragt wurde.',
    done: 'Jetzt wurde nichts geändert. Noch einmal ansehen, dann wählen.',
  },
  ownKept: {
    what: 'Die Datei sagt von dieser Strecke anderes als das Archiv.',
    done: 'Was dem Archiv fehlte, kam hinzu; im Übrigen blieb das Eigene.',
  },
};
