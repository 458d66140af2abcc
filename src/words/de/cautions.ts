import type { Words } from '../words.ts';

export const cautions: Words['cautions'] = [
  'Diese Urteile sind aus dem errechnet, was gemessen und eingetragen wurde. Gelände, Wetter, Reifen und Fahrer ändern sich: jedes Hindernis erst zu Fuß abgehen, und im Zweifel nicht fahren.',
  'Regeln vor Ort, Sperrungen und die Leute, die für das Land sorgen, gehen allem vor, was hier gedruckt steht. Ebenso der Rat von jemandem mit Ausbildung, der vor Ort ist.',
  'Fließendes Wasser: Niemand fährt oder watet in Wasser, dessen Grund und Tiefe nicht bekannt sind oder das steigt. Umkehren ist immer eine Spur.',
  'Immer nur ein Fahrzeug im Hindernis. Niemand steht unterhalb, am Schräghang daneben oder zwischen dem Fahrzeug und etwas, gegen das es rollen könnte.',
  'Ein Fahrzeug herausziehen: nur an Bergepunkten mit angegebener Last und mit geprüftem Gerät, nie an der Kugel einer Anhängekupplung; alle außer Reichweite des Seils; eine ausgebildete Person gibt die Kommandos.',
  'Regen, oder Fahrzeuge davor, können jedes Urteil ändern: noch einmal messen.',
];
