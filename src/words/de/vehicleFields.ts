import type { Words } from '../words.ts';

export const vehicleFields: Words['vehicleFields'] = {
  widthM: {
    label: 'Breite über die Spiegel',
    sentence: 'Mit dem Maßband von Spiegel zu Spiegel, eingeklappt, wenn so gefahren wird.',
  },
  heightM: { label: 'Höhe', sentence: 'Mit dem Maßband vom Boden bis zum höchsten Teil auf dem Dach.' },
  frontOverhangM: { label: 'Überhang vorn', sentence: 'Mitte des Vorderrads bis zum vordersten Punkt.' },
  rearOverhangM: { label: 'Überhang hinten', sentence: 'Mitte des Hinterrads bis zum hintersten Punkt.' },
  approachRad: {
    label: 'Böschungswinkel vorn',
    sentence: 'Steilste Rampe, an die die Front heranfährt, ohne aufzusetzen; steht im Handbuch.',
  },
  rampoverRad: {
    label: 'Rampenwinkel',
    sentence: 'Schärfste Kuppe, über die der Unterboden frei hinwegkommt; steht im Handbuch.',
  },
  departureRad: {
    label: 'Böschungswinkel hinten',
    sentence: 'Steilste Rampe, die das Heck verlässt, ohne aufzusetzen; eine Anhängekupplung verringert ihn.',
  },
  bellyHeightM: {
    label: 'Höhe des Unterbodens',
    sentence: 'Tiefstes festes Teil zwischen den Achsen, nicht an einer Achse.',
  },
  sillHeightM: { label: 'Höhe der Schweller', sentence: 'Unterkante von Schweller oder Trittbrett.' },
  wheelbaseM: { label: 'Radstand', sentence: 'Mitte des Vorderrads bis Mitte des Hinterrads.' },
  frontTrackWidthM: {
    label: 'Spurweite vorn',
    sentence: 'Mitte der linken bis Mitte der rechten Lauffläche, vorn.',
  },
  rearTrackWidthM: {
    label: 'Spurweite hinten',
    sentence: 'Mitte der linken bis Mitte der rechten Lauffläche, hinten.',
  },
  frontAxle: {
    label: 'Vorderachse',
    sentence:
      'Starrachse: ein Gehäuse verbindet beide Räder. Einzelradaufhängung: jedes Rad federt für sich.',
  },
  rearAxle: {
    label: 'Hinterachse',
    sentence:
      'Starrachse: ein Gehäuse verbindet beide Räder. Einzelradaufhängung: jedes Rad federt für sich.',
  },
  frontDifferentialHeightM: {
    label: 'Höhe des vorderen Differentials',
    sentence: 'Tiefster Punkt des Gehäuses oder des Schutzes darunter.',
  },
  frontDifferentialYM: {
    label: 'Vorderes Differential, links der Mitte',
    sentence: 'Wie weit das Gehäuse neben der Mitte der Achse sitzt; links ist positiv.',
  },
  rearDifferentialHeightM: {
    label: 'Höhe des hinteren Differentials',
    sentence: 'Tiefster Punkt des Gehäuses oder des Schutzes darunter.',
  },
  rearDifferentialYM: {
    label: 'Hinteres Differential, links der Mitte',
    sentence: 'Wie weit das Gehäuse neben der Mitte der Achse sitzt; links ist positiv.',
  },
  frontBumpM: { label: 'Einfederweg vorn', sentence: 'Von der Höhe im beladenen Stand bis zum Anschlag.' },
  frontDroopM: {
    label: 'Ausfederweg vorn',
    sentence: 'Von der Höhe im beladenen Stand bis ganz ausgefedert.',
  },
  rearBumpM: { label: 'Einfederweg hinten', sentence: 'Von der Höhe im beladenen Stand bis zum Anschlag.' },
  rearDroopM: {
    label: 'Ausfederweg hinten',
    sentence: 'Von der Höhe im beladenen Stand bis ganz ausgefedert.',
  },
  frontRideHz: {
    label: 'Federfrequenz vorn',
    sentence:
      'Schwingungen in der Sekunde nach Niederdrücken und Loslassen; weich 1,1, üblich 1,4, hart 1,8.',
  },
  rearRideHz: {
    label: 'Federfrequenz hinten',
    sentence: 'Schwingungen in der Sekunde nach Niederdrücken und Loslassen; weich 1,2, üblich 1,5, hart 2.',
  },
  frontAntiRollNmPerRad: {
    label: 'Stabilisator vorn',
    sentence: 'Wanksteifigkeit, die der Stabilisator zu den Federn hinzufügt; 0 ohne Stabilisator.',
  },
  rearAntiRollNmPerRad: {
    label: 'Stabilisator hinten',
    sentence: 'Wanksteifigkeit, die der Stabilisator zu den Federn hinzufügt; 0 ohne Stabilisator.',
  },
  antiRollDisconnects: {
    label: 'Stabilisatoren lösbar',
    sentence: 'Der Fahrer kann die Stabilisatoren vor einem Hindernis außer Kraft setzen.',
  },
  turningCircleM: { label: 'Wendekreis', sentence: 'Von Bordstein zu Bordstein; steht im Handbuch.' },
  massKg: {
    label: 'Masse beladen',
    sentence: 'Fahrzeugwaage, mit Leuten, Kraftstoff, Wasser und Gepäck, ohne die Dachlast.',
  },
  frontShare: {
    label: 'Anteil vorn',
    sentence: 'Fahrzeugwaage: Vorderachse geteilt durch beide Achsen, ohne die Dachlast.',
  },
  massHeightM: {
    label: 'Schwerpunkthöhe',
    sentence: 'Über ebenem Boden, ohne die Dachlast; Geländewagen liegen um 0,7 m (28 in).',
  },
  roofLoadKg: { label: 'Dachlast', sentence: 'Alles über dem Dach, mit Träger und Zelt.' },
  roofLoadHeightM: { label: 'Höhe der Dachlast', sentence: 'Mitte der Dachlast über dem Boden.' },
  tyreDiameterM: {
    label: 'Reifendurchmesser',
    sentence: 'Latte über den Reifen legen und bis zum Boden messen, unbelastet.',
  },
  tyreSectionM: { label: 'Reifenbreite', sentence: 'Die erste Zahl auf der Flanke.' },
  tyrePattern: { label: 'Reifenprofil', sentence: 'Wofür das Profil gemacht ist.' },
  tyrePressurePa: {
    label: 'Reifendruck',
    sentence: 'Wie auf der Strecke gefahren, bevor Luft abgelassen wird.',
  },
  lowPressurePa: {
    label: 'Niedrigster Reifendruck',
    sentence: 'So niedrig, wie dieser Reifen auf dieser Felge im Gelände gefahren werden darf.',
  },
  tyreStiffnessNPerM: {
    label: 'Reifensteifigkeit',
    sentence: 'Last geteilt durch Einfederung eines Reifens beim eingetragenen Druck.',
  },
  drive: { label: 'Antrieb', sentence: 'Welche Achsen der Motor erreicht.' },
  centre: {
    label: 'Mitteldifferential',
    sentence: 'Ohne: zuschaltbarer Allrad, zugeschaltet drehen beide Achsen wie eine.',
  },
  lowRangeRatio: {
    label: 'Untersetzung',
    sentence: 'Untersetzung des Verteilergetriebes; 1, wo es keine gibt.',
  },
  crawlRatio: { label: 'Kriechübersetzung', sentence: 'Erster Gang × Achsübersetzung × Untersetzung.' },
  engineTorqueNm: { label: 'Drehmoment des Motors', sentence: 'Größtes Drehmoment.' },
  frontDifferential: {
    label: 'Vorderes Differential',
    sentence: 'Was die beiden Vorderräder verschieden schnell drehen lässt.',
  },
  frontBias: {
    label: 'Momentverhältnis vorn',
    sentence: 'Begrenzter Schlupf: Moment des besseren Rads geteilt durch das des schlechteren.',
  },
  rearDifferential: {
    label: 'Hinteres Differential',
    sentence: 'Was die beiden Hinterräder verschieden schnell drehen lässt.',
  },
  rearBias: {
    label: 'Momentverhältnis hinten',
    sentence: 'Begrenzter Schlupf: Moment des besseren Rads geteilt durch das des schlechteren.',
  },
  brakeTraction: {
    label: 'Bremseneingriff',
    sentence:
      'Bremst ein durchdrehendes Rad ab. Spät: greift ruckartig nach viel Schlupf. Früh: wirkt fast sofort.',
  },
  engineTraction: {
    label: 'Traktionskontrolle über den Motor',
    sentence: 'Nimmt Gas weg, wenn Räder durchdrehen; wann sie sich zurücknimmt.',
  },
  stabilityControl: {
    label: 'Fahrstabilitätskontrolle',
    sentence: 'Bremst einzelne Räder, um die Richtung zu halten; wann sie sich zurücknimmt.',
  },
  hillDescent: { label: 'Bergabfahrhilfe', sentence: 'Hält bergab mit den Bremsen Schritttempo.' },
  wadingDepthM: { label: 'Wattiefe', sentence: 'Angabe des Herstellers, für stehendes Wasser.' },
  floorHeightM: {
    label: 'Höhe des Kabinenbodens',
    sentence: 'Unterkante des Kabinenbodens; fließendes Wasser darüber beginnt das Fahrzeug zu tragen.',
  },
  frontPointN: {
    label: 'Bergepunkt vorn',
    sentence: 'Zulässige Last; 0, wo es keinen Punkt mit Angabe gibt.',
  },
  rearPointN: {
    label: 'Bergepunkt hinten',
    sentence: 'Zulässige Last; 0, wo es keinen Punkt mit Angabe gibt.',
  },
  winchN: { label: 'Seilwinde', sentence: 'Nennzug auf der ersten Lage; 0 ohne Winde.' },
  ropeM: { label: 'Windenseil', sentence: 'Nutzbare Länge.' },
  straps: {
    label: 'Bergegurt',
    sentence: 'Ein kinetischer Gurt oder ein kinetisches Seil und geprüfte Schäkel.',
  },
  boards: { label: 'Sandbleche', sentence: 'Ein Paar Sandbleche.' },
};
