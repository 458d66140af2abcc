/**
 * How the briefing looks on paper: black on white, no grey that a copier loses, no fill that a printer leaves out. The page
 * holds it as it stands here: the Content-Security-Policy knows it by its hash.
 */
export const PAGE_STYLE = `
@page { margin: 10mm; }
* { box-sizing: border-box; }
body { max-width: 190mm; margin: 0 auto; padding: 4mm; color: #000; background: #fff; font: 10.5pt/1.22 Arial, 'Liberation Sans', Helvetica, sans-serif; overflow-wrap: break-word; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
h1 { margin: 0; font-size: 17pt; line-height: 1.1; }
h2 { margin: 3.2mm 0 1.1mm; padding-bottom: 0.6mm; border-bottom: 0.5mm solid #000; font-size: 12.5pt; line-height: 1.1; break-after: avoid; }
h3, h4 { margin: 0 0 0.6mm; font-size: 11.5pt; line-height: 1.15; break-after: avoid; }
h4 { font-size: 11.5pt; }
p, ul, ol { margin: 0.6mm 0; }
ul { padding-left: 4.5mm; }
ol { padding-left: 6mm; }
li { break-inside: avoid; }
.note { white-space: pre-wrap; }
.meet { margin: 1.2mm 0; padding: 1mm 2mm; border: 0.5mm solid #000; font-weight: 700; }
.strong { font-weight: 700; }
.radio .blank { display: inline-block; width: 70mm; height: 6mm; border-bottom: 0.3mm solid #000; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 0.4mm 1mm; border: 0.2mm solid #000; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
thead { display: table-header-group; }
tr, article, figure, .call { break-inside: avoid; }
.map { float: left; margin: 0.5mm 4mm 1mm 0; }
.map + h2 { margin-top: 0.5mm; }
.long-section, h2:has(+ .cautions) { clear: both; }
h2, ol { display: flow-root; }
.cautions { padding: 0; list-style: none; }
.cautions li { margin-bottom: 0.4mm; }
.cautions li::before { content: '\\2013\\00a0'; }
.matrix { table-layout: fixed; line-height: 1.14; }
.matrix + .matrix { margin-top: 4mm; }
.matrix .word { font-weight: 700; }
.plain .word { font-weight: 400; }
.halt { border-width: 0.7mm; }
.mark { vertical-align: -0.2em; }
.obstacles { columns: 2; column-gap: 5mm; }
.obstacle { margin: 0 0 0.6mm; padding: 0 0 0.5mm; border-bottom: 0.2mm solid #000; }
.obstacle p { margin: 0.2mm 0; }
.cards { break-before: page; }
.card { margin: 0 0 4mm; padding: 1.6mm 2mm; border: 0.5mm solid #000; -webkit-box-decoration-break: clone; box-decoration-break: clone; }
.card h3 { font-size: 14pt; }
.card p { margin: 0.3mm 0; }
.card .radio { float: right; max-width: 60mm; margin: 0 0 0 4mm; font-size: 12pt; }
.calls { columns: 2; column-gap: 1.4mm; margin: 0.6mm 0; }
.call { display: flow-root; margin: 0 0 0.6mm; padding: 0.5mm 1.2mm; border: 0.2mm solid #000; }
.call.halt { border-width: 0.7mm; }
.call p { margin: 0; }
.call .at { font-weight: 400; white-space: nowrap; }
.call .sketch { float: right; margin: 0 0 0.6mm 1.5mm; }
figure { margin: 1mm 0; }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { font-size: 9pt; }
.drawing text { fill: #000; font-size: 13.5px; paint-order: stroke; stroke: #fff; stroke-width: 3px; }
.drawing path { stroke: #000; stroke-width: 0.8; }
.drawing .ground { stroke: none; }
.drawing .slope { stroke: none; }
.drawing .surface { stroke-width: 2; }
.drawing .other { stroke-width: 1; stroke-dasharray: 2 2; }
.drawing .tick, .drawing .bound, .drawing .water-level { stroke-width: 1.4; }
.drawing .plane, .drawing .level { stroke-dasharray: 5 4; }
.drawing .centre { stroke-dasharray: 14 3 2 3; }
.drawing .bound.open { stroke-dasharray: 3 4; }
.drawing .water { stroke: none; }
.drawing .flag { fill: #fff; stroke: #000; stroke-width: 1.2; }
.drawing .flag-number { font-weight: 700; stroke: none; text-anchor: middle; }
.sketch .tyre, .sketch .axle { fill: #000; }
.sketch .axle { stroke-width: 2; }
.sketch .body { stroke-width: 1; }
.sketch .centre { stroke-dasharray: 6 3; }
.sheet { border: 0.2mm solid #000; }
.sheet .way { stroke-linejoin: round; stroke-width: 1.4; }
.sheet .steep-1 { stroke-width: 2; }
.sheet .steep-2 { stroke-width: 2.8; }
.sheet .steep-3 { stroke-width: 3.6; }
.sheet .steep-4 { stroke-width: 4.6; }
.sheet .steep-5 { stroke-width: 5.6; }
.sheet .unknown { stroke-dasharray: 3 3; }
.sheet .tick { stroke-width: 1; }
.sheet .arrow, .sheet .north, .sheet .pin, .sheet .bar.dark { fill: #000; }
.sheet .bar { fill: #fff; stroke: #000; stroke-width: 0.8; }
.sheet .bar.dark { fill: #000; }
.sheet .end-point { fill: #fff; stroke: #000; stroke-width: 1.6; }
@media print { body { max-width: none; padding: 0 0.4mm; } }
`;
