const TOOLBOX = 'Engineering ToolBox, "Tractive effort" (adhesion) and "Rolling resistance", tables';
const NOON = 'Noon, Engineering Analysis of Vehicular Accidents, 1994, coefficient table';
const TYRES = 'tyre supplier table "tyre adhesion coefficients" (Bohnenkamp), dry / wet';
const CARVILL = "Carvill, Mechanical Engineer's Data Handbook, rolling resistance table";
const MARKS = "Marks' Standard Handbook for Mechanical Engineers, rolling friction table";
const WINCHING = 'winching resistance factors of a strap supplier, low authority';
const SNOW = 'recovery engineer case study, snow rolling-to-pull 0.1 to 0.3, low authority';
const MUD = `no table for mud; taken as wet earth, ${TYRES}; ${WINCHING}: light to moderate mud 0.33, to the rim 0.75`;

/** Where adhesion and rolling resistance of each ground are printed; titles as published. */
export const sources = {
  gravel: {
    dry: `${TOOLBOX}: dry gravel 0.6 to 0.7; ${NOON}: 0.35; ${MARKS}`,
    wet: `${TOOLBOX}: wet gravel 0.3 to 0.5; ${MARKS}: wet loose gravel 0.06`,
  },
  earth: {
    dry: `${TYRES}: earth 0.50 to 0.60; ${NOON}: gravel and dirt road 0.35; ${TOOLBOX}`,
    wet: `${TYRES}: earth wet 0.15 to 0.25; ${TOOLBOX}`,
  },
  clay: {
    dry: `${TOOLBOX}: dry clay 0.5 to 0.6`,
    wet: `no table for wet clay; taken as wet earth, ${TYRES}`,
  },
  sand: {
    dry: `${TOOLBOX}: loose sand 0.3 to 0.4; ${CARVILL}: 0.1 to 0.2`,
    wet: `no table for wet sand; adhesion as loose sand, ${TOOLBOX}; ${WINCHING}: 0.17 to 0.20`,
  },
  rock: {
    dry: `no table for bare rock; taken as crushed stone 0.60 to 0.70, ${TYRES}; ${TOOLBOX}: cobbles 0.03`,
    wet: `no table for bare rock; taken as crushed stone wet 0.40 to 0.50, ${TYRES}; ${TOOLBOX}: cobbles 0.03`,
  },
  grass: {
    dry: `no table for dry grass; taken as dry earth, ${TYRES}, ${NOON}; ${WINCHING}: dry grass 0.14`,
    wet: `${NOON}: wet grassy field 0.20; ${WINCHING}`,
  },
  mud: { dry: MUD, wet: MUD },
  snow: {
    dry: `${TOOLBOX}: 0.2; ${NOON}: 0.20 to 0.25; ${TYRES}: packed 0.25 to 0.35; ${SNOW}`,
    wet: `${NOON}: snow 0.20 to 0.25, ice 0.15; ${SNOW}`,
  },
  ice: {
    dry: `${TYRES}: 0.05 to 0.15; ${NOON}: 0.10 to 0.15`,
    wet: `${TYRES}: from 0.05; ${TOOLBOX}: wet ice 0.1`,
  },
  asphalt: {
    dry: `${TYRES}: 0.70 to 0.80; ${NOON}: 0.65; ${TOOLBOX}`,
    wet: `${TYRES}: 0.45 to 0.55; ${TOOLBOX}: 0.6`,
  },
  concrete: {
    dry: `${TYRES}: 0.80 to 0.90; ${NOON}: 0.75; ${TOOLBOX}; ${CARVILL}: worn 0.02`,
    wet: `${TYRES}: 0.50 to 0.60; ${TOOLBOX}: 0.6; ${CARVILL}: worn 0.02`,
  },
};
