import type { Words } from '../words.ts';

export const store: Words['store'] = {
  'not available': {
    what: 'Dieser Browser behält nichts für Rutline (ein privates Fenster, oder der Speicher ist abgeschaltet).',
    done: 'Die Fahrt als Datei speichern, bevor dieses Fenster geschlossen wird.',
  },
  full: {
    what: 'Auf dem Gerät ist kein Platz mehr.',
    done: 'Nichts Gespeichertes wurde geändert. Die Fahrt als Datei speichern, Platz schaffen, dann noch einmal speichern.',
  },
  blocked: {
    what: 'Rutline ist in einem anderen Fenster offen, das älter ist als dieses.',
    done: 'Die anderen Fenster von Rutline schließen, dann dieses neu laden.',
  },
  closed: {
    what: 'Der Speicher wurde geschlossen: Ein neueres Rutline wurde in einem anderen Fenster geöffnet, oder der Browser hat ihn geschlossen.',
    done: 'Die Fahrt als Datei speichern, dann dieses Fenster neu laden.',
  },
  silent: {
    what: 'Der Speicher des Geräts antwortet nicht.',
    done: 'Die Fahrt als Datei speichern, falls eben etwas eingegeben wurde, dann diese Seite neu laden. Was vorher gespeichert war, ist noch da.',
  },
  missing: {
    what: 'Diese Fahrt gibt es auf diesem Gerät nicht.',
    done: 'Vielleicht wurde sie in einem anderen Fenster entfernt.',
  },
  corrupt: {
    what: 'Die gespeicherte Fahrt ist beschädigt und kann nicht gelesen werden.',
    done: 'Sie bleibt, wie sie ist. Ihre Rohdaten als Datei speichern und die letzte Fahrtdatei öffnen.',
  },
  'newer version': {
    what: 'Ein neueres Rutline hat das gespeichert.',
    done: 'Nichts wurde geändert. Dieses Fenster neu laden, um Rutline zu erneuern, dann öffnen.',
  },
  'changed elsewhere': {
    what: 'Die Fahrt wurde in einem anderen Fenster geändert, seit sie hier geöffnet wurde.',
    done: 'Nichts Gespeichertes wurde geändert. Beide behalten, diese als eigene Fahrt; oder mit der gespeicherten weitermachen, und diese entfällt.',
  },
  failed: {
    what: 'Das Gerät konnte es nicht ausführen.',
    done: 'Nichts Gespeichertes wurde geändert. Die Fahrt als Datei speichern, dann noch einmal versuchen.',
  },
};
