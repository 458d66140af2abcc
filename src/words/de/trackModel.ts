import type { Words } from '../words.ts';

export const trackModel: Words['trackModel'] = {
  title: 'Höhenmodell',
  offer: (name) =>
    `${name} liegt unter der Karte. Entlang der Strecke gelesen prüft es die aufgezeichneten Höhen, kann sie ersetzen und nennt die Querneigung.`,
  lay: 'Entlang der Strecke lesen',
  layInstead: (name) => `Stattdessen ${name} entlang der Strecke lesen`,
  laying: (share) => `Das Modell wird entlang der Strecke gelesen: ${share}`,
  stop: 'Anhalten',
  none: (name) => `${name} hat kein Gelände entlang dieser Strecke. Nichts wurde geändert.`,
  failed: (fault) =>
    `Das Modell ließ sich entlang der Strecke nicht lesen (${fault}). Nichts wurde geändert.`,
  readOff: 'Neigungen werden gelesen aus',
  from: { recorded: 'der Aufzeichnung', model: 'dem Höhenmodell' },
  about: (name, nodes, baseline) =>
    `${name}, Knoten ${nodes} auseinander: Eine Steilstelle, die kürzer ist als ${baseline}, zeigt sich darin nicht. Was an einem Pin abgelesen wurde, gilt vor ihm.`,
  knowsAll: 'Es hat Gelände an jedem Punkt der Strecke.',
  knowsSome: (share) =>
    `Es hat Gelände an ${share} der Punkte. Anderswo sind Neigungen daraus nicht bekannt; nichts tritt an ihre Stelle.`,
  assumed: 'Bis jemand ihn einträgt, gilt ein Fehler, wie er bei solchen Knoten üblich ist.',
  stored: 'Was gelesen wurde, bleibt bei der Fahrt; die Datei wird nicht mehr gebraucht.',
  remove: 'Das Modell von der Strecke nehmen',
  step: {
    lay: 'ein Höhenmodell entlang der Strecke lesen',
    choose: 'wählen, aus welchen Höhen Neigungen gelesen werden',
    error: 'den Fehler des Höhenmodells eintragen',
    remove: 'das Höhenmodell von der Strecke nehmen',
  },
  steepestCamber: 'Steilste Querneigung des Hangs',
  camber: {
    left: (angle, plusMinus) => `Hang ${angle} ± ${plusMinus}, linke Seite höher`,
    right: (angle, plusMinus) => `Hang ${angle} ± ${plusMinus}, rechte Seite höher`,
  },
  hillside: 'Die Querneigung ist die des Hangs, nicht die des gebauten Weges.',
  elevation: {
    recorded: (elevation) => `aufgezeichnet ${elevation}`,
    model: (elevation) => `Modell ${elevation}`,
  },
  slopesModel: (name, nodes, error, baseline) =>
    `Neigungen und Höhen sind die des Höhenmodells ${name} (Knoten ${nodes} auseinander, Fehler ${error} als Standardabweichung), nicht die aufgezeichneten: Eine Steilstelle, die kürzer ist als ${baseline}, zeigt sich nicht, und wo das Modell kein Gelände hat, sind Neigungen nicht bekannt.`,
  slopesRecorded: (name) =>
    `Neigungen und Höhen sind die aufgezeichneten; das Höhenmodell ${name} dient dazu, sie zu prüfen.`,
  agree: {
    everywhere: 'Modell und Aufzeichnung stimmen überein, wo beide bekannt sind.',
    usually: 'Modell und Aufzeichnung stimmen meist überein',
    there: (place) => `; am weitesten davon ab bei ${place}, wo beide übereinstimmen.`,
  },
  usual: {
    above: (metres) => `Das Modell liegt meist ${metres} über der Aufzeichnung`,
    below: (metres) => `Das Modell liegt meist ${metres} unter der Aufzeichnung`,
  },
  most: {
    above: (metres, place) => `; am weitesten davon ab bei ${place}, wo das Modell ${metres} darüber liegt.`,
    below: (metres, place) => `; am weitesten davon ab bei ${place}, wo das Modell ${metres} darunter liegt.`,
  },
  nowhereBoth: 'Nirgends sind beide bekannt, sodass nichts die einen oder die anderen prüft.',
};
