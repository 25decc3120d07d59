import type { LockedStyle } from '../standalone.js';

/** A plain page for screen and paper, light or dark as the reader has it. */
const css = `
@page { size: auto; margin: 14mm; }
:root { color-scheme: light dark; --ink: #14181c; --quiet: #4a5259; --line: #b9c0c6; --ground: #fff; }
@media (prefers-color-scheme: dark) { :root { --ink: #e8ebed; --quiet: #b3bac0; --line: #4d555c; --ground: #15181b; } }
@media print { :root { --ink: #000; --quiet: #333; --line: #999; --ground: #fff; } }
* { box-sizing: border-box; }
body { margin: 0; color: var(--ink); background: var(--ground); font: 14px/1.45 'Liberation Sans', Arial, Helvetica, sans-serif; overflow-wrap: anywhere; }
main { max-width: 1000px; margin: 0 auto; padding: 24px 20px 48px; }
h1 { margin: 0; font-size: 1.5em; line-height: 1.25; }
h2 { margin: 28px 0 8px; font-size: 1.12em; break-after: avoid; }
p { margin: 6px 0 0; max-width: 72ch; }
.about, .aside, tr.aside > * { color: var(--quiet); font-weight: 400; }
.aside { font-size: 0.9em; }
.said { display: block; color: var(--quiet); font-size: 0.9em; }
thead .aside { display: block; }
[scope=rowgroup] { padding-right: 12px; vertical-align: top; }
.verdict { margin-top: 14px; font-size: 1.08em; }
@media screen { .wide { overflow-x: auto; } }
.wide:focus-visible { outline: 2px solid var(--ink); outline-offset: 2px; }
table { border-collapse: collapse; min-width: 60%; font-variant-numeric: tabular-nums lining-nums; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 3px 0 3px 20px; text-align: right; vertical-align: baseline; font-weight: 400; }
th:first-child, thead td:first-child { padding-left: 0; text-align: left; }
.words { text-align: left; }
td, .date { white-space: nowrap; }
td.words { white-space: normal; }
thead th, thead td { vertical-align: bottom; border-bottom: 1px solid var(--ink); }
thead th:not(:has(bdi)) { white-space: nowrap; }
tbody th:first-child { min-width: 10em; }
tbody + tbody tr:first-child > * { padding-top: 12px; }
.now > * { font-weight: 700; }
.sum > * { font-weight: 700; border-top: 1px solid var(--line); }
ul { margin: 0; padding-left: 20px; max-width: 80ch; }
li { margin-top: 4px; }
@media print { body { font-size: 9.5pt; } main { max-width: none; padding: 0; } h1 { font-size: 15pt; } section { margin-top: 5mm; } }
`;

/** Of the style above; a test works it out again. */
export const exportStyle: LockedStyle = { css, sha256: '2qkzuaeNT4q7BHZMN6OOvdhQEigl7qr88vG316bs44k=' };
