import { html, type Html } from '../page/html.js';
import { standalone } from '../standalone.js';
import { quoteStyle } from './quote-style.js';
import type { BillGroup, Blank, Block, Fact, FindingSaid, Own, Said, Section, Sheet } from './sheet.js';
import type { QuotePicture } from './types.js';
import { absentWords } from './words.js';

/** A quote as one file that prints on A4 and Letter. Every text from outside is escaped and set apart by its direction. */
export function quoteHtml(sheet: Sheet): string {
  const { language, shop, heading, title, facts, proposal, sections } = sheet;
  const body = html`<main>
<header class="head">
<div class="shop">${shop.name === '' ? undefined : html`<p class="name">${bdi(shop.name)}</p>`}${shop.lines.length === 0 ? undefined : html`<p class="address">${shop.lines.map((line, i) => html`${i === 0 ? undefined : html`<br>`}${bdi(line)}`)}</p>`}</div>
<p class="sort">${heading}</p>
</header>
<h1>${bdi(title)}</h1>
${facts.length === 0 ? undefined : factList(facts, 'about')}
<section class="proposal" aria-labelledby="proposal"><h2 id="proposal"><span class="label">${proposal.label}</span> ${bdi(proposal.title)}</h2>
${factList(proposal.facts, 'key')}</section>
${sections.map(sectionHtml)}
</main>`;
  return standalone(language, `${heading}: ${title}`, quoteStyle, body);
}

function bdi(text: string): Html {
  return html`<bdi>${text}</bdi>`;
}

function saidHtml(said: Said): Html {
  return html`${said.map((part: string | Own) => (typeof part === 'string' ? html`${part}` : bdi(part.own)))}`;
}

function factList(facts: readonly Fact[], sort: 'about' | 'key'): Html {
  return html`<dl class="${sort}">${facts.map(({ label, says }) => html`<div><dt>${label}</dt><dd>${saidHtml(says)}</dd></div>`)}</dl>`;
}

function sectionHtml({ key, title, blocks }: Section): Html {
  return html`<section class="part ${key}" aria-labelledby="${key}"><h2 id="${key}">${title}</h2>
${blocks.map((block) => blockHtml(block, key))}</section>
`;
}

function blockHtml(block: Block, section: string): Html {
  switch (block.kind) {
    case 'words': return html`<p>${saidHtml(block.says)}</p>\n`;
    case 'list': return html`<ul>${block.items.map((item) => html`<li>${saidHtml(item)}</li>`)}</ul>\n`;
    case 'findings': return html`<ol class="findings">${block.items.map(findingHtml)}</ol>\n`;
    case 'bill': return billHtml(block.groups, block.total);
    case 'table': return tableHtml(block, section);
    case 'form': return html`<div class="form">${block.blanks.map(blankHtml)}</div>\n`;
  }
}

function findingHtml({ says, details, pictures }: FindingSaid): Html {
  return html`<li><span class="seen">${saidHtml(says)}</span>${details.map((one) => html`<span class="detail">${saidHtml(one)}</span>`)}${pictures.map((picture, i) => pictureHtml(picture, says, pictures.length === 1 ? undefined : i + 1))}</li>`;
}

function pictureHtml(picture: QuotePicture, of: Said, number: number | undefined): Html {
  if (picture.kind === 'absent') return html`<span class="absent">Picture ${bdi(picture.name)}: ${absentWords[picture.why]}.</span>`;
  const says = `Picture${number === undefined ? '' : ` ${number}`} of: ${of.map((part) => (typeof part === 'string' ? part : part.own)).join('')}`;
  return html`<img alt="${says}" src="${picture.data}">`;
}

function billHtml(groups: readonly BillGroup[], total: { readonly label: string; readonly amount: string }): Html {
  return html`<table class="bill">
<thead><tr><th scope="col">For</th><th scope="col">Hours</th><th scope="col">Amount</th></tr></thead>
${groups.map(groupHtml)}<tbody class="total"><tr><th scope="row">${total.label}</th><td></td><td>${bdi(total.amount)}</td></tr></tbody>
</table>
`;
}

function groupHtml({ key, title, says, lines, hours, amount }: BillGroup): Html {
  return html`<tbody class="${key}"><tr class="group"><th scope="rowgroup" colspan="3"><span class="title">${title}</span><span class="detail">${saidHtml(says)}</span></th></tr>
${lines.map((line) => html`<tr class="line"><th scope="row">${bdi(line.title)}${line.detail.length === 0 ? undefined : html` <span class="detail">${saidHtml(line.detail)}</span>`}</th><td>${line.hours === undefined ? undefined : bdi(line.hours)}</td><td>${bdi(line.amount)}</td></tr>
`)}${lines.length < 2 ? undefined : html`<tr class="sum"><th scope="row">${title}</th><td>${hours === undefined ? undefined : bdi(hours)}</td><td>${bdi(amount)}</td></tr>
`}</tbody>
`;
}

/** On a narrow screen it scrolls inside itself, also by keyboard; it has the name of its section. */
function tableHtml({ heads, rows }: Extract<Block, { readonly kind: 'table' }>, section: string): Html {
  return html`<table class="small" aria-labelledby="${section}" tabindex="0">
<thead><tr>${heads.map(({ text, align }) => html`<th scope="col" class="${align}">${text}</th>`)}</tr></thead>
<tbody>${rows.map(({ cells, isMarked }) => html`<tr${isMarked ? html` class="marked"` : undefined}>${cells.map((cell, i) => (i === 0 ? html`<th scope="row">${saidHtml(cell)}</th>` : html`<td class="${heads[i]?.align ?? 'words'}">${saidHtml(cell)}</td>`))}</tr>
`)}</tbody>
</table>
`;
}

function blankHtml(blank: Blank): Html {
  if (blank.kind === 'line') return html`<p><span>${blank.label}</span><span class="rule"></span></p>`;
  return html`<p><span>${blank.label}</span><span class="choices">${blank.of.map((one) => html`<span class="choice"><span class="box"></span>${one}</span>`)}</span></p>`;
}
