import type { Words } from '../words.ts';

/** Exchange of graded tracks with a server of the club. */
export const clubServer: Words['clubServer'] = {
  head: 'Mit dem Server des Clubs austauschen',
  help: 'Alle eingestuften Strecken mit Geschichte, Namen und Fotos, in beide Richtungen. Eine hier entfernte Strecke kommt zurück, wenn der Server sie hat.',
  address: 'Adresse des Servers',
  addressHelp:
    'Etwa https://tracks.example.org. Einfaches http nur auf diesem Gerät oder im eigenen Netz, wo jeder, der mithört, den Schlüssel lesen kann.',
  badAddress:
    'Das ist keine Adresse eines Servers: sie beginnt mit https://, oder mit http:// für einen im eigenen Netz.',
  key: 'Dein Schlüssel',
  keyHelp: 'Von dem, der den Server betreut. Er bleibt auf diesem Gerät.',
  badKey: 'Das ist kein Schlüssel: er hat nur Buchstaben, Ziffern, Bindestriche und Unterstriche.',
  use: 'Diesen Server nehmen',
  useHelp: 'Die Seite wird neu geladen.',
  change: 'Ändern',
  forget: 'Server vergessen',
  exchange: 'Jetzt austauschen',
  exchanging: 'Tauscht aus …',
  stop: 'Anhalten',
  never: 'Noch nicht ausgetauscht.',
  last: (when) => `Zuletzt ausgetauscht: ${when}.`,
  stopped: 'Angehalten. Was bis dahin ausgetauscht wurde, bleibt; es geht jederzeit weiter.',
  same: 'Auf beiden Seiten nichts Neues.',
  went: (names, n) =>
    n === 1 ? `Dem Server gegeben: ${names}.` : `Dem Server gegeben, ${n} Strecken: ${names}.`,
  stayed: (names) => `Dein Schlüssel darf nur nehmen. Was hier geändert wurde, blieb hier: ${names}.`,
  more: (n) => `und ${n} weitere`,
  trouble: {
    offline: {
      what: 'Der Server antwortet nicht.',
      done: 'Hier geht nichts verloren. Netz und Adresse prüfen und später noch einmal austauschen.',
    },
    key: {
      what: 'Der Server kennt diesen Schlüssel nicht.',
      done: 'Neu eintippen, oder den fragen, der den Server betreut.',
    },
    readOnly: {
      what: 'Dieser Schlüssel darf nur nehmen.',
      done: 'Den, der den Server betreut, um einen Schlüssel bitten, der geben darf.',
    },
    notOurs: {
      what: 'Unter dieser Adresse ist etwas, aber kein Server mit Strecken eines Clubs.',
      done: 'Die Adresse prüfen.',
    },
    incomplete: {
      what: 'Dem Server fehlt ein Teil von dem, was vorher geändert wurde.',
      done: 'Noch einmal austauschen; bleibt es so, die Datei der Strecke dem geben, der den Server betreut.',
    },
    tooLarge: {
      what: 'Die Strecke ist größer, als der Server nimmt.',
      done: 'Sie bleibt hier. Fotos herausnehmen oder sie als Datei geben.',
    },
    damaged: {
      what: 'Der Server konnte nicht lesen, was er bekam, und hat nichts davon behalten.',
      done: 'Noch einmal austauschen.',
    },
    busy: { what: 'Der Server hat zu viel zu tun.', done: 'In einer Minute noch einmal austauschen.' },
    failed: {
      what: 'Der Server konnte es nicht speichern.',
      done: 'Hier geht nichts verloren. Dem sagen, der den Server betreut.',
    },
  },
};
