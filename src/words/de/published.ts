import type { Words } from '../words.ts';

/** Published archives: read from any web host, and written to be put on one. */
export const published: Words['published'] = {
  head: 'Veröffentlichte Archive',
  intro:
    'Sieh in die Strecken, die ein Club ins Netz gestellt hat. Gelesen wird nur, was du ansiehst, und nichts wird abgefragt, bevor du den Knopf drückst.',
  seen: 'Der Server sieht, dass dein Netz liest und welche Teile; von dir geht nichts dorthin.',
  address: 'Adresse des Archivs',
  addressHelp: 'Etwa https://club.example.org/tracks. Sie wird auf diesem Gerät gemerkt.',
  badAddress:
    'Das ist keine Adresse eines Archivs: sie beginnt mit https://, oder mit http:// für eines im eigenen Netz.',
  look: 'Hineinsehen',
  lookInto: (address) => `In ${address} hineinsehen`,
  reload: 'Für eine neue Adresse wird die Seite neu geladen.',
  known: 'Schon gelesen',
  forget: 'Vergessen',
  forgetArchive: (address) => `${address} vergessen`,
  opening: (address) => `Fragt ${address} …`,
  again: 'Noch einmal versuchen',
  other: 'Ein anderes Archiv',
  holds: (tracks, n) => (n === 1 ? '1 Strecke im Archiv' : `${tracks} Strecken im Archiv`),
  inView: (n) => (n === 1 ? '1 Strecke zu sehen' : `${n} Strecken zu sehen`),
  read: (size) => `${size} gelesen`,
  reading: 'Liest …',
  list: 'Strecken auf der Karte',
  map: 'Karte des veröffentlichten Archivs',
  crowds: 'Strecken nah beieinander',
  crowdsHelp: 'Die Gegend ist zu groß, um jede Strecke zu nennen. Wähle, wo du näher hinsehen willst.',
  crowd: (name, more) => (more === 0 ? name : `${name} und ${more} weitere`),
  tooWide: 'Die Gegend ist zu groß',
  tooWideHelp: 'Geh auf der Karte näher heran, auf weniger als etwa 50 km.',
  noneHere: 'Hier sind keine Strecken',
  noneHereHelp: 'Verschiebe die Karte oder sieh das ganze Archiv an.',
  wholeArchive: 'Das ganze Archiv',
  empty: 'Dieses Archiv hat keine Strecken',
  emptyHelp: 'Wer es betreut, hat es ohne eine veröffentlicht. Sieh in ein anderes oder komm später wieder.',
  sheet: {
    unknown:
      'Diese Strecke war nicht unter denen, die gelesen wurden. Wähle sie auf der Karte oder in der Liste.',
    fetching: 'Liest die Strecke …',
    takeOver: 'In mein Archiv übernehmen',
    takeOverHelp: 'Dann ist sie auf diesem Gerät und auch ohne Netz da.',
    haveIt:
      'Du hast diese Strecke schon. Was deiner fehlt, kommt hinzu; wo beide etwas sagen, bleibt das Eigene.',
    tookOver: (name) => `${name} ist in deinem Archiv.`,
    see: 'Dort ansehen',
    openTrip: 'Als Fahrt öffnen',
    openTripHelp: 'Mit dem Konvoi der offenen Fahrt.',
    from: (address) =>
      `Von ${address}. Veröffentlicht ohne Namen, Notizen, Uhrzeiten, Fotos und Ausgänge: wer maß, steht hier nicht.`,
  },
  trouble: {
    noNetwork: {
      what: 'Es gibt kein Netz.',
      done: 'Was auf diesem Gerät ist, geht ohne. Sieh wieder hinein, wo es eines gibt.',
    },
    unreachable: {
      what: 'Unter dieser Adresse antwortet nichts.',
      done: 'Sieh nach, ob die Adresse stimmt und ob es ein Netz gibt, und versuche es noch einmal.',
    },
    noCors: {
      what: 'Der Server antwortet, lässt aber keine Seite einer anderen Adresse seine Dateien lesen.',
      done: 'Sag es dem, der das Archiv betreut: zu den Dateien gehört der Kopf Access-Control-Allow-Origin (CORS).',
    },
    onlyHttps: {
      what: 'Diese Seite kam über https und darf keine Adresse mit einfachem http abfragen.',
      done: 'Frage den, der das Archiv betreut, nach der Adresse mit https.',
    },
    nothingThere: {
      what: 'Der Server hat unter dieser Adresse kein Archiv.',
      done: 'Tippe die Adresse des Ordners ein, in dem tracks.pmtiles liegt, oder die dieser Datei.',
    },
    refused: {
      what: 'Der Server gibt das nicht heraus.',
      done: 'Frage den, der das Archiv betreut, ob es für alle offen ist.',
    },
    busy: {
      what: 'Der Server hat zu viel zu tun oder ist gestört.',
      done: 'Versuche es in einer Minute noch einmal.',
    },
    moved: {
      what: 'Der Server schickt an eine andere Adresse weiter.',
      done: 'Öffne die Adresse im Browser und tippe hier die ein, bei der du ankommst.',
    },
    wholeFiles: {
      what: 'Der Server gibt nur ganze Dateien heraus, keine Teile davon.',
      done: 'Nichts wurde gelesen. Sag es dem, der das Archiv betreut: es braucht einen Server, der Bereichsanfragen beantwortet.',
    },
    noArchive: {
      what: 'Unter dieser Adresse ist etwas, aber kein veröffentlichtes Archiv.',
      done: 'Sieh nach, ob die Adresse stimmt.',
    },
    newer: {
      what: 'Ein neueres Rutline hat dieses Archiv veröffentlicht.',
      done: 'Lade diese Seite neu, um Rutline zu erneuern, und sieh noch einmal hinein.',
    },
    brokenIndex: {
      what: 'Das Verzeichnis des Archivs ist beschädigt.',
      done: 'Nichts von diesem Teil wird verwendet. Bitte den, der das Archiv betreut, es neu zu veröffentlichen.',
    },
    brokenRecord: {
      what: 'Der Datensatz dieser Strecke ist beschädigt: er ist nicht das, was das Verzeichnis von ihm sagt.',
      done: 'Nichts davon wurde übernommen. Bitte den, der das Archiv betreut, es neu zu veröffentlichen.',
    },
    changed: {
      what: 'Das Archiv wurde neu veröffentlicht, seit du hineingesehen hast.',
      done: 'Sieh noch einmal hinein.',
    },
  },

  write: {
    head: 'Für Leser veröffentlichen',
    help: 'Alle gefundenen Strecken als zwei Dateien für irgendeinen Webserver. Jeder, der die Adresse hat, liest sie, und lädt nur den Teil, den er ansieht.',
    prepare: 'Ansehen, was hinausgeht',
    count: (n) => (n === 1 ? '1 Strecke geht hinaus' : `${n} Strecken gehen hinaus`),
    carried: 'Geht mit',
    carriedList: [
      'die aufgezeichnete Linie und ihre Wegpunkte, ohne Zeiten',
      'Hindernisse mit Ort, allen Maßen und wie jedes gemessen wurde, ihre Spuren',
      'Grade nach Maßen und die Tage der Messungen',
      'Namen von Strecken, Gegenden, Hindernissen, Spuren und Wegpunkten, wie sie dastehen: lies sie auf Menschen durch',
    ],
    left: 'Bleibt hier',
    leftList: [
      'wer maß, notierte oder fuhr',
      'Notizen und Uhrzeiten',
      'Fotos',
      'was Fahrzeuge taten',
      'Geschichte und offene Wahlen',
    ],
    names: 'Diese Strecken',
    more: (n) => `und ${n} weitere`,
    folder: 'In einen Ordner schreiben',
    zip: 'Als Zip speichern',
    cancel: 'Abbrechen',
    working: 'Packt die Strecken',
    stop: 'Anhalten',
    stopped: 'Angehalten. Nichts wurde geschrieben.',
    done: (tracks, n, folder) =>
      n === 1 ? `1 Strecke steht jetzt in ${folder}.` : `${tracks} Strecken stehen jetzt in ${folder}.`,
    doneZip: (tracks, n) =>
      n === 1 ? '1 Strecke ist im Zip. Packe es aus.' : `${tracks} Strecken sind im Zip. Packe es aus.`,
    files: (index, indexSize, records, recordsSize) =>
      `${index}, ${indexSize}, und ${records}, ${recordsSize}.`,
    next: 'Lege beide nebeneinander auf einen Webserver, der Bereichsanfragen beantwortet und andere Seiten lesen lässt (CORS): bei einer neuen Fassung die zweite zuerst. Gib Lesern die Adresse des Ordners.',
    nowhere: (names) => `Weggelassen, weil nichts davon einen Ort hat: ${names}.`,
    unread: (n) =>
      n === 1
        ? '1 Strecke war nicht zu lesen und ist weggelassen.'
        : `${n} Strecken waren nicht zu lesen und sind weggelassen.`,
    nothing: 'Keine dieser Strecken hat einen Ort. Nichts wurde geschrieben.',
    failed: (why) =>
      `Das ließ sich nicht schreiben: ${why} Wähle einen anderen Ordner oder speichere als Zip.`,
    fileName: 'veroeffentlichte-strecken.zip',
  },
};
