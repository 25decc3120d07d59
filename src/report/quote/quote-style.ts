import type { LockedStyle } from '../standalone.js';

/**
 * The look of a printed quote: ink on white, one measure, figures in columns. Nothing needs a coloured background, and
 * no line is torn from its group at the foot of a page.
 */
const css = `
@page { size: auto; margin: 15mm 16mm 17mm; @bottom-right { content: counter(page) ' / ' counter(pages); font: 8pt 'Liberation Sans', Arial, Helvetica, sans-serif; color: #444; } }
:root { color-scheme: light; --ink: #14181c; --quiet: #4a5259; --line: #b9c0c6; --strong: #14181c; }
* { box-sizing: border-box; }
html { background: #fff; }
body { margin: 0; color: var(--ink); background: #fff; font: 10pt/1.4 'Liberation Sans', Arial, Helvetica, sans-serif; overflow-wrap: anywhere; }
main { max-width: 186mm; margin: 0 auto; padding: 12mm 8mm 20mm; }
h1, h2, p, dl, dd, ul, ol { margin: 0; padding: 0; }
bdi { unicode-bidi: isolate; }
.head { display: flex; justify-content: space-between; gap: 8mm; align-items: baseline; padding-bottom: 3mm; border-bottom: 0.6mm solid var(--strong); }
.shop .name { font-size: 15pt; font-weight: 700; line-height: 1.2; }
.shop .address { color: var(--quiet); font-size: 9.5pt; }
.sort { font-size: 11pt; white-space: nowrap; }
h1 { margin-top: 6mm; font-size: 14pt; line-height: 1.25; font-weight: 700; }
h2 { font-size: 11.5pt; line-height: 1.3; font-weight: 700; break-after: avoid; }
.about { display: grid; grid-template-columns: repeat(2, 1fr); gap: 0.4mm 8mm; margin-top: 2.5mm; }
.about > div { display: grid; grid-template-columns: 24mm 1fr; }
.about > div:first-child { grid-column: 1 / -1; }
dt { color: var(--quiet); }
.proposal { margin-top: 6mm; padding: 3.5mm 5mm 4mm; border: 0.3mm solid var(--strong); border-radius: 1mm; break-inside: avoid; }
.proposal h2 { font-size: 13pt; }
.proposal .label { display: block; font-size: 9.5pt; font-weight: 400; color: var(--quiet); }
.key { display: flex; flex-wrap: wrap; gap: 2mm 10mm; margin-top: 2.5mm; }
.key dt { font-size: 9pt; }
.key dd { font-weight: 700; }
.key > div:first-child dd { font-size: 15pt; line-height: 1.1; }
.key > div { display: flex; flex-direction: column; justify-content: flex-end; }
.part { margin-top: 6mm; }
.part > h2 { margin-bottom: 1.5mm; }
.part > p + p, .part > ul + p, .part > ol + p, .part > table + p { margin-top: 2mm; }
.part p { max-width: 160mm; text-wrap: pretty; orphans: 3; widows: 3; }
ul, ol { padding-left: 5mm; }
li { padding-left: 1mm; margin-top: 0.8mm; break-inside: avoid; }
.detail { color: var(--quiet); font-size: 9.2pt; font-weight: 400; }
.findings .detail, .findings .absent { display: block; }
.absent { color: var(--quiet); font-style: italic; font-size: 9.2pt; }
.findings img { display: inline-block; max-width: 58mm; max-height: 38mm; margin: 1mm 3mm 1mm 0; border: 0.2mm solid var(--line); vertical-align: top; }
.findings + p { color: var(--quiet); font-size: 9.2pt; }
table { width: 100%; border-collapse: collapse; font-variant-numeric: tabular-nums lining-nums; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 0.75mm 0; vertical-align: baseline; text-align: left; font-weight: 400; }
thead th { font-size: 9pt; color: var(--quiet); border-bottom: 0.25mm solid var(--strong); padding-bottom: 0.6mm; }
.bill th:first-child { padding-right: 6mm; }
.bill td, .bill thead th:nth-child(n+2) { text-align: right; white-space: nowrap; padding-left: 5mm; width: 1%; }
.bill .group { break-after: avoid; }
.bill .group th { padding-top: 3.2mm; padding-bottom: 1mm; }
.bill .group .title { display: block; font-weight: 700; }
.bill .group .detail { display: block; max-width: 150mm; line-height: 1.35; }
.bill .line > * { border-top: 0.15mm solid var(--line); }
.bill .line .detail::before { content: '· '; }
.bill .sum { break-before: avoid; }
.bill .sum > * { border-top: 0.25mm solid var(--strong); font-weight: 700; }
.bill .total { break-before: avoid; }
.bill .total > tr > * { padding-top: 2mm; border-top: 0.6mm solid var(--strong); font-weight: 700; font-size: 12.5pt; }
.bill .total::before { content: ''; display: block; height: 4mm; }
.small th, .small td { padding: 1.2mm 6mm 1.2mm 0; border-top: 0.15mm solid var(--line); }
.small thead th { border-top: 0; }
.small .figures { text-align: right; white-space: nowrap; padding-right: 0; padding-left: 5mm; }
.small .marked > * { font-weight: 700; }
.could-be-found .small td.words { font-size: 9.2pt; }
.could-be-found .small th[scope=row] { width: 34%; }
.cautions p, .cautions li, .rules p, .rules li { font-size: 9pt; line-height: 1.35; }
.rules ul { columns: 2; column-gap: 8mm; }
.rules li { margin: 0 0 0.8mm; }
.rules, .ready, .warranty, .deposit li { break-inside: avoid; }
.authorisation { break-inside: avoid; margin-top: 9mm; padding-top: 3mm; border-top: 0.6mm solid var(--strong); }
.form { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm 10mm; margin-top: 5mm; }
.form p { display: flex; gap: 3mm; align-items: flex-end; min-height: 8mm; }
.form p:has(.choices) { align-items: baseline; }
.form p > span:first-child { white-space: nowrap; }
.rule { flex: 1; border-bottom: 0.2mm solid var(--strong); }
.choices { display: flex; flex-wrap: wrap; gap: 1mm 5mm; }
.choice { display: inline-flex; gap: 1.5mm; align-items: center; }
.box { width: 3.6mm; height: 3.6mm; border: 0.25mm solid var(--strong); }
@media (max-width: 640px) {
  main { padding: 5mm 4mm 12mm; }
  .about, .form { grid-template-columns: 1fr; }
  .rules ul { columns: 1; }
  .small { display: block; overflow-x: auto; }
}
@media print {
  main { max-width: none; padding: 0; }
  a { color: inherit; }
}
`;

/** Of the style above; a test works it out again. */
export const quoteStyle: LockedStyle = { css, sha256: '/1CkCtIsj9sHKaw1BgYd+tFrSqgn+aY9Bbm5DIhvUb4=' };
