import { pictureColours, pictureVariable } from "./pictureColours.ts";
import { PAGE_PALETTES, type PagePalette, TINTS, tintOf } from "./planPalette.ts";
import type { ReachGrade } from "./reachGrades.ts";

/** Every look of the page: colours in three lights, phone, desk and paper. */
export function planStyle(grades: readonly ReachGrade[], head: { readonly left: string; readonly right: string }): string {
	const { day, dark, lamp } = PAGE_PALETTES;
	return `${colours(":root", grades, day)}
@media screen {
@media (prefers-color-scheme: dark) {
:root { color-scheme: dark; }
${colours(":root", grades, dark)}
}
${colours(LAMP, grades, lamp)}
}
${RULES}
@page wide { size: A4 landscape; }
@page { size: A4; margin: 16mm 11mm 14mm; @top-left { content: ${cssString(head.left)}; font: 8pt sans-serif; } @top-right { content: ${cssString(head.right)}; font: 8pt sans-serif; } @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
`;
}

const LAMP = ":root:has(#lamp:checked)";

function colours(selector: string, grades: readonly ReachGrade[], palette: PagePalette): string {
	const { paper, card, ink, text, quiet, hatch, mark } = palette;
	const tints = TINTS.map((_, grade) => `--tint-${grade}: ${tintOf(grade, palette)};`);
	const pictures = pictureColours(grades).map(({ day, of }) => `${pictureVariable(day)}: ${of(palette)};`);
	return `${selector} { --paper: ${paper}; --card: ${card}; --ink: ${ink}; --text: ${text}; --quiet: ${quiet}; --hatch: ${hatch}; --mark: ${mark}; ${[...tints, ...pictures].join(" ")} }`;
}

/** Text as a string of CSS, every character but letters and digits by number: nothing in it ends the string or the style. */
function cssString(text: string): string {
	return `"${text.replace(/[^A-Za-z0-9 ,.-]/gu, (character) => `\\${character.codePointAt(0)!.toString(16)} `)}"`;
}

const RULES = `* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; scroll-padding-top: 1rem; }
body { margin: 0 auto; max-width: 78rem; padding: 0 clamp(0.75rem, 2.5vw, 2rem) 3rem; background: var(--paper); color: var(--text); font: 1rem/1.45 "Source Sans 3", system-ui, sans-serif; overflow-wrap: break-word; }
bdi { overflow-wrap: anywhere; }
html { background: var(--paper); }
a { color: inherit; text-underline-offset: 0.15em; text-decoration-thickness: 1px; }
:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
h1 { font-size: clamp(1.5rem, 5vw, 2.1rem); line-height: 1.15; margin: 1.2rem 0 0.3rem; }
h2 { font-size: 1.35rem; line-height: 1.2; margin: 0 0 0.5rem; padding-top: 0.35rem; border-top: 3px solid var(--ink); }
h3 { font-size: 1.05rem; margin: 1.1rem 0 0.3rem; }
h4 { font-size: 0.95rem; margin: 0.7rem 0 0.3rem; }
section { margin-top: 2.2rem; }
p { margin: 0.35rem 0; max-width: 46rem; }
ul { margin: 0.35rem 0; padding-left: 1.2rem; }
.quiet { color: var(--quiet); }
input { accent-color: var(--ink); }
.lamp { float: right; margin: 0.6rem 0 0 1rem; font-size: 0.9rem; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 0.5rem 1.2rem; margin: 0.8rem 0; }
.facts dt { color: var(--quiet); font-size: 0.85rem; }
.facts dd { margin: 0; font-weight: 600; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.2rem 1.1rem; list-style: none; padding: 0; }
nav a { display: inline-block; padding: 0.3rem 0; }
.cautions { columns: 16rem; column-gap: 1.6rem; }
.cautions > div { break-inside: avoid; padding-bottom: 0.5rem; }
.cautions h3 { margin-top: 0.3rem; }
.stop, .fix { border: 2px solid var(--mark); padding: 0.4rem 0.7rem; margin: 0.5rem 0; max-width: 46rem; }
.stop { border-width: 4px; }
.word { display: inline-block; padding: 0 0.4em; font-weight: 700; border: 1px solid var(--mark); }
.stop > .word, .word.stop-word { background: var(--mark); color: var(--paper); }
.said bdi { overflow-wrap: normal; }
table { border-collapse: collapse; width: 100%; margin: 0.4rem 0 1rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-weight: 600; padding: 0.3rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.28rem 0.55rem 0.28rem 0; border-bottom: 1px solid var(--hatch); }
th { font-weight: 600; }
thead th { font-size: 0.85rem; color: var(--quiet); vertical-align: bottom; }
td.figure { white-space: nowrap; }
.figure { text-align: right; }
th.figure { padding-left: 0.4rem; }
.group th { padding-top: 0.9rem; font-size: 1.02rem; }
.part th { font-weight: 400; }
.served { table-layout: fixed; }
.served .figure { width: 6.5rem; }
.served thead th:first-child { width: 32%; }
.bars { vertical-align: middle; padding-left: 0.9rem; }
.reasons, .removed { table-layout: fixed; }
.reasons thead th:first-child, .removed thead th:first-child { width: 11rem; }
.watch { width: auto; min-width: min(100%, 23rem); }
.off { table-layout: fixed; }
.off thead th:first-child { width: 30%; }
.off .figure { width: 4rem; }
.bar, .word { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.bar { display: block; height: 0.42rem; min-width: 1px; background: var(--ink); }
.bar.before { height: 0.3rem; background: none; border: 1px solid var(--ink); border-left-width: 2px; margin-bottom: 2px; }
details { margin: 0.35rem 0; }
summary { cursor: pointer; padding: 0.35rem 0; font-weight: 600; }
summary .quiet, h4 .quiet { font-weight: 400; }
details details { margin-left: 0.8rem; }
.columns { columns: 17rem; column-gap: 1.6rem; padding-left: 0; list-style: none; }
.columns li { break-inside: avoid; padding: 0.12rem 0; }
.legend { display: flex; flex-wrap: wrap; gap: 0.35rem 1.4rem; padding: 0; list-style: none; font-size: 0.9rem; }
.legend li { display: flex; align-items: center; gap: 0.45rem; }
svg { display: block; }
.strip { display: grid; grid-template-columns: repeat(auto-fill, minmax(9.2rem, 1fr)); gap: 4px; list-style: none; padding: 0; margin: 0.4rem 0 1.2rem; }
.cell { position: relative; background: var(--card); border: 1px solid var(--hatch); padding: 0.25rem 0.4rem 0.35rem; font-size: 0.84rem; line-height: 1.3; min-width: 0; break-inside: avoid; }
.cell .number { font-weight: 700; font-size: 1rem; margin-right: 0.3em; }
.cell .tag { font-weight: 600; font-family: "Source Code Pro", ui-monospace, monospace; font-size: 0.84rem; white-space: pre-wrap; }
.cell a { text-decoration: none; display: block; }
.cell a:hover .tag, .cell a:focus-visible .tag { text-decoration: underline; }
.cell svg { width: 100%; height: auto; margin: 0.25rem 0 0.1rem; }
.cell .dial, .cell .sends { display: block; }
.cell .sends b { font-weight: 700; }
.cell .marks { display: block; min-height: 1.3em; }
.cell.empty { align-self: start; background: none; border-style: dotted; color: var(--quiet); }
.cell.changed { border: 2px solid var(--ink); padding: calc(0.25rem - 1px) calc(0.4rem - 1px); }
.cell.guard { border: 3px solid var(--mark); padding: calc(0.25rem - 2px) calc(0.4rem - 2px); }
.cell .guard-word { display: block; background: var(--mark); color: var(--paper); font-weight: 700; text-align: center; margin: 0 -0.2rem 0.2rem; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.mark { display: inline-block; border: 1px solid var(--ink); padding: 0 0.3em; margin-right: 0.25em; font-size: 0.78rem; }
.scroll { position: relative; overflow-x: auto; }
.use { table-layout: fixed; min-width: 60rem; font-size: 0.86rem; margin: 0; }
.use thead th:first-child { width: 9rem; }
.use thead th { text-align: left; padding: 0.2rem 0 0.2rem 2px; border-left: 1px solid var(--hatch); font-weight: 400; }
.use thead th:first-child { border-left: 0; }
.use td { position: relative; border-left: 2px solid var(--paper); padding: 0.2rem 0 0.2rem 3px; line-height: 1.25; }
.use td, .chance { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.use td b { font-size: 1.02em; }
.use td a { white-space: nowrap; }
.use td .second { display: block; }
.use .none { color: var(--quiet); }
.g0 { background: var(--tint-0); }
.g1 { background: var(--tint-1); }
.g2 { background: var(--tint-2); }
.use .night td { padding: 0; border-left: 0; }
.use .night svg { width: 100%; height: 0.8rem; }
.use .night th { white-space: nowrap; font-weight: 400; font-size: 0.85rem; color: var(--quiet); }
.chance { display: inline-block; width: 1.8rem; height: 1.1rem; border: 1px solid var(--hatch); }
.when, .said { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media screen and (max-width: 62rem) {
.use { min-width: 0; }
.use, .use tbody, .use tr, .use th, .use td { display: block; width: auto; }
.use thead, .use caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.use tr { padding: 0.5rem 0; border-bottom: 1px solid var(--hatch); }
.use th, .use td { border: 0; padding: 0.2rem 0.4rem; }
.use th[scope="row"] { padding-left: 0; font-size: 1rem; }
.use .night { display: flex; gap: 0.6rem; align-items: baseline; }
.use .night td { display: block; }
.use .night svg { display: none; }
.use td { display: grid; grid-template-columns: 6.2rem 1fr 1fr; gap: 0.3rem; margin: 2px 0; font-size: 0.95rem; }
.use td .second { display: inline; }
.use td .when, .use td .said { position: static; width: auto; height: auto; clip-path: none; overflow: visible; white-space: normal; }
.use .when { font-variant-numeric: tabular-nums; }
}
@media screen and (max-width: 32rem) {
.strip { grid-template-columns: repeat(2, minmax(0, 1fr)); }
.stack thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.stack, .stack caption:not(.said), .stack tbody, .stack tr, .stack th, .stack td { display: block; width: auto; border: 0; padding: 0.05rem 0; }
.stack tr { border-bottom: 1px solid var(--hatch); padding: 0.4rem 0; }
.served tr { display: grid; grid-template-columns: repeat(3, 1fr); gap: 0 0.6rem; }
.served th, .served .bars { grid-column: 1 / -1; }
.stack .figure { text-align: left; width: auto; }
.figure[data-name]::after { content: " " attr(data-name); color: var(--quiet); font-size: 0.85rem; }
.served .figure:not([data-name]) { display: none; }
}
@media print {
html { font-size: 8.5pt; }
body { max-width: none; padding: 0; line-height: 1.3; }
.lamp, nav { display: none; }
p, .stop, .fix { max-width: none; }
a { text-decoration: none; }
details::details-content { content-visibility: visible; block-size: auto; display: block; }
summary { list-style: none; }
summary::-webkit-details-marker { display: none; }
h2, h3, h4, summary, caption, thead, .group { break-after: avoid; }
tr, .cell, .stop, .fix, .cautions > div { break-inside: avoid; }
section { margin-top: 5mm; }
h1 { font-size: 17pt; margin-top: 0; }
h2 { font-size: 13pt; }
h3 { font-size: 10.5pt; margin-top: 3mm; }
th, td { padding-top: 0.4mm; padding-bottom: 0.4mm; }
.strip { grid-template-columns: repeat(7, minmax(0, 1fr)); gap: 1mm; }
.cell { font-size: 7pt; padding: 0.6mm 1mm; }
.cell .number { font-size: 9pt; }
.cell .tag { font-size: 7.2pt; }
.mark { font-size: 6.6pt; }
.leg { page: wide; }
.use { min-width: 0; font-size: 9pt; }
.use thead th:first-child { width: 30mm; }
.scroll { overflow: visible; }
.watch, .leg { break-inside: avoid; }
.use .night svg { height: 3mm; }
.reasons thead th:first-child, .removed thead th:first-child { width: 34mm; }
.use td { padding-left: 0.5mm; }
.reasons, .removed, .off, .findings { font-size: 8pt; line-height: 1.25; }
.use tbody { break-inside: auto; }
.columns { columns: 3; font-size: 8pt; }
}
`;
