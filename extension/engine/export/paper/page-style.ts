/**
 * One style for all papers: black on white in any theme, readable on Letter and A4, headings kept with
 * what follows them, rows of tables unbroken, page numbers where the printer knows them.
 */
export const pageStyle = `
:root { color-scheme: light; }
@page { margin: 16mm 15mm 18mm; @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }
* { box-sizing: border-box; }
html { background: #fff; }
body { margin: 0 auto; padding: 12mm 10mm; max-width: 190mm; background: #fff; color: #000;
  font: 10.5pt/1.4 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; overflow-wrap: anywhere; }
h1 { margin: 0; font-size: 19pt; line-height: 1.2; }
h2 { margin: 7mm 0 2mm; padding-bottom: 1mm; border-bottom: 0.4mm solid #000; font-size: 12.5pt; }
h3 { margin: 4mm 0 1mm; font-size: 11pt; }
h1, h2, h3, .lead { break-after: avoid; }
p { margin: 0 0 2mm; }
ul { margin: 0 0 2mm; padding-left: 5mm; }
header { margin-bottom: 5mm; padding-bottom: 3mm; border-bottom: 0.8mm solid #000; }
.kind { margin-bottom: 1mm; font-size: 10pt; font-weight: 600; letter-spacing: 0.08em; text-transform: uppercase; }
dl.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(52mm, 1fr)); gap: 1mm 6mm; margin: 3mm 0 0; }
dl.facts div { display: flex; gap: 2mm; }
dl.facts dt { flex: none; color: #444; }
dl.facts dt::after { content: ":"; }
dl.facts dd { margin: 0; font-weight: 600; }
table { width: 100%; margin: 0 0 3mm; border-collapse: collapse; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 1.1mm 2mm 1.1mm 0; border-bottom: 0.2mm solid #bbb; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-bottom: 0.4mm solid #000; font-size: 9.5pt; }
tr.group th { padding-top: 3mm; font-weight: 700; break-after: avoid; }
.n { width: 1%; text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; padding-left: 2mm; }
.c { width: 7mm; }
.w { width: 1%; padding-right: 4mm; white-space: nowrap; }
.s { min-width: 30mm; overflow-wrap: normal; }
tr.strong td { border-top: 0.6mm solid #000; font-weight: 700; }
.small { color: #333; font-size: 9pt; }
.warn { padding: 2mm 3mm; border: 0.5mm solid #000; font-weight: 600; break-inside: avoid; }
.box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.3mm solid #000; vertical-align: -0.4mm; }
.blank { display: inline-block; min-width: 40mm; margin: 6mm 6mm 0 0; border-top: 0.3mm solid #000; }
.blank.wide { min-width: 82mm; }
.blank .label { color: #333; font-size: 9pt; }
.avoid { break-inside: avoid; }
.cards { display: grid; gap: 6mm; }
.card { padding: 5mm; border: 0.6mm solid #000; border-radius: 2mm; break-inside: avoid; }
.card h2 { margin: 0 0 2mm; border: 0; padding: 0; font-size: 17pt; }
.card p { font-size: 12.5pt; }
.card p.small { font-size: 10.5pt; }
.amounts { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm; margin: 2mm 0 3mm; }
.amounts > div { padding: 2.5mm 3mm; border: 0.4mm solid #000; }
.amounts .what { font-size: 12pt; font-weight: 600; }
.amounts .much { font-size: 34pt; font-weight: 700; line-height: 1.15; white-space: nowrap; }
.amounts .also { font-size: 13pt; }
svg { display: block; max-width: 100%; max-height: 175mm; height: auto; }
figure { margin: 0 0 4mm; break-inside: avoid; }
.n + td, .n + th { padding-left: 4mm; }
@media print { body { padding: 0; max-width: none; } }
@media screen and (max-width: 600px) { .amounts { grid-template-columns: 1fr; } }
`;
