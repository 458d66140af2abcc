import type { Words } from '../words.ts';

const TOOLBOX = 'Engineering ToolBox, „Tractive effort“ (Haftung) und „Rolling resistance“, Tabellen';
const NOON = 'Noon, Engineering Analysis of Vehicular Accidents, 1994, Beiwerttabelle';
const TYRES = 'Tabelle der Reifen-Haftbeiwerte eines Reifenhändlers (Bohnenkamp), trocken / nass';
const CARVILL = "Carvill, Mechanical Engineer's Data Handbook, Tabelle der Rollwiderstände";
const MARKS = "Marks' Standard Handbook for Mechanical Engineers, Tabelle der Rollreibung";
const WINCHING = 'Widerstandsbeiwerte beim Winden, von einem Gurthändler, wenig verlässlich';
const SNOW = 'Fallstudie eines Bergungsingenieurs, Rollwiderstand im Schnee 0,1 bis 0,3, wenig verlässlich';
const MUD = `keine Tabelle für Schlamm; wie nasse Erde, ${TYRES}; ${WINCHING}: leichter bis mittlerer Schlamm 0,33, bis zur Felge 0,75`;

export const sources: Words['sources'] = {
  gravel: {
    dry: `${TOOLBOX}: trockener Schotter 0,6 bis 0,7; ${NOON}: 0,35; ${MARKS}`,
    wet: `${TOOLBOX}: nasser Schotter 0,3 bis 0,5; ${MARKS}: nasser loser Schotter 0,06`,
  },
  earth: {
    dry: `${TYRES}: Erde 0,50 bis 0,60; ${NOON}: Schotter- und Erdstraße 0,35; ${TOOLBOX}`,
    wet: `${TYRES}: Erde nass 0,15 bis 0,25; ${TOOLBOX}`,
  },
  clay: {
    dry: `${TOOLBOX}: trockener Lehm 0,5 bis 0,6`,
    wet: `keine Tabelle für nassen Lehm; wie nasse Erde, ${TYRES}`,
  },
  sand: {
    dry: `${TOOLBOX}: loser Sand 0,3 bis 0,4; ${CARVILL}: 0,1 bis 0,2`,
    wet: `keine Tabelle für nassen Sand; Haftung wie loser Sand, ${TOOLBOX}; ${WINCHING}: 0,17 bis 0,20`,
  },
  rock: {
    dry: `keine Tabelle für blanken Fels; wie gebrochener Stein 0,60 bis 0,70, ${TYRES}; ${TOOLBOX}: Kopfsteinpflaster 0,03`,
    wet: `keine Tabelle für blanken Fels; wie gebrochener Stein, nass, 0,40 bis 0,50, ${TYRES}; ${TOOLBOX}: Kopfsteinpflaster 0,03`,
  },
  grass: {
    dry: `keine Tabelle für trockenes Gras; wie trockene Erde, ${TYRES}, ${NOON}; ${WINCHING}: trockenes Gras 0,14`,
    wet: `${NOON}: nasse Wiese 0,20; ${WINCHING}`,
  },
  mud: { dry: MUD, wet: MUD },
  snow: {
    dry: `${TOOLBOX}: 0,2; ${NOON}: 0,20 bis 0,25; ${TYRES}: festgefahren 0,25 bis 0,35; ${SNOW}`,
    wet: `${NOON}: Schnee 0,20 bis 0,25, Eis 0,15; ${SNOW}`,
  },
  ice: {
    dry: `${TYRES}: 0,05 bis 0,15; ${NOON}: 0,10 bis 0,15`,
    wet: `${TYRES}: ab 0,05; ${TOOLBOX}: nasses Eis 0,1`,
  },
  asphalt: {
    dry: `${TYRES}: 0,70 bis 0,80; ${NOON}: 0,65; ${TOOLBOX}`,
    wet: `${TYRES}: 0,45 bis 0,55; ${TOOLBOX}: 0,6`,
  },
  concrete: {
    dry: `${TYRES}: 0,80 bis 0,90; ${NOON}: 0,75; ${TOOLBOX}; ${CARVILL}: abgenutzt 0,02`,
    wet: `${TYRES}: 0,50 bis 0,60; ${TOOLBOX}: 0,6; ${CARVILL}: abgenutzt 0,02`,
  },
};
