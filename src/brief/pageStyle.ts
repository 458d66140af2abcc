/** How the briefing looks on paper: black on white, no grey that a copier loses, no fill that a printer leaves out. */
export const PAGE_STYLE = `
@page { margin: 12mm; }
* { box-sizing: border-box; }
body { max-width: 190mm; margin: 0 auto; padding: 4mm; color: #000; background: #fff; font: 10pt/1.35 'Noto Sans', 'Liberation Sans', Arial, sans-serif; }
h1 { margin: 0; font-size: 18pt; line-height: 1.15; }
h2 { margin: 7mm 0 2mm; padding-bottom: 1mm; border-bottom: 0.6mm solid #000; font-size: 13pt; }
h3 { margin: 0 0 1mm; font-size: 11pt; }
p, ul { margin: 1mm 0; }
ul { padding-left: 5mm; }
.note { white-space: pre-wrap; }
.strong { font-weight: 700; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 1mm 1.5mm; border: 0.2mm solid #000; text-align: left; vertical-align: top; }
thead { display: table-header-group; }
tr, article, figure { break-inside: avoid; }
.matrix { font-size: 8.5pt; line-height: 1.25; }
.matrix .word { display: block; font-weight: 700; }
.plain .word { font-weight: 400; }
.halt { border-width: 0.7mm; }
.mark { vertical-align: -0.25em; }
article { margin: 0 0 4mm; padding: 2mm 0 0; border-top: 0.2mm solid #000; }
h2 + article { border-top: 0; }
.card, h2 + .card { padding: 3mm; border: 0.4mm solid #000; }
figure { margin: 2mm 0; }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { font-size: 8.5pt; }
.drawing text { fill: #000; font-size: 12px; paint-order: stroke; stroke: #fff; stroke-width: 3px; }
.drawing path { stroke: #000; stroke-width: 0.8; }
.drawing .ground { stroke: none; }
.drawing .surface { stroke-width: 2; }
.drawing .tick, .drawing .bound, .drawing .water-level { stroke-width: 1.4; }
.drawing .plane, .drawing .level { stroke-dasharray: 5 4; }
.drawing .centre { stroke-dasharray: 14 3 2 3; }
.drawing .bound.open { stroke-dasharray: 3 4; }
.drawing .water { stroke: none; }
@media print { body { max-width: none; padding: 0; } }
`;
