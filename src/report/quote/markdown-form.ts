import { plain } from '../plain.js';
import type { BillGroup, Blank, Block, Fact, FindingSaid, Said, Section, Sheet } from './sheet.js';
import { pictureText } from './text-form.js';

/** A quote as Markdown (CommonMark, with the tables of GitHub Flavored Markdown). No text from outside becomes markup. */
export function quoteMarkdown({ shop, heading, title, facts, proposal, sections }: Sheet): string {
  const head = [
    ...(shop.name === '' ? [] : [`**${escaped(shop.name)}**`]),
    ...shop.lines.map(escaped),
  ];
  return `${[
    ...(head.length === 0 ? [] : [head.join('\\\n')]),
    `# ${heading}: ${escaped(title)}`,
    ...(facts.length === 0 ? [] : [factItems(facts)]),
    `## ${proposal.label}: ${escaped(proposal.title)}`,
    factItems(proposal.facts),
    ...sections.flatMap(sectionParts),
  ].join('\n\n')}\n`;
}

/** Characters that mean something in Markdown, wherever they stand. */
const ALWAYS = /[\\`*_{}[\]<>#|&~!$^@]/g;

/** Text from outside as text: no heading, list, link, table cell or markup comes of it. */
export function escaped(text: string): string {
  return plain(text).trim()
    .replace(ALWAYS, '\\$&')
    .replace(/:(?=\S)/g, '\\:') // addresses that would become links
    .replace(/www\./gi, (found) => `${found.slice(0, 3)}\\.`)
    .replace(/^[-+=]/, '\\$&')
    .replace(/^(\d+)([.)])/, '$1\\$2');
}

function textOf(said: Said): string {
  return said.map((part) => (typeof part === 'string' ? part.replace(ALWAYS, '\\$&') : escaped(part.own))).join('');
}

function factItems(facts: readonly Fact[]): string {
  return facts.map(({ label, says }) => `- ${label}: **${textOf(says)}**`).join('\n');
}

function sectionParts({ title, blocks }: Section): string[] {
  return [`## ${title}`, ...blocks.flatMap(blockParts)];
}

function blockParts(block: Block): string[] {
  switch (block.kind) {
    case 'words': return [textOf(block.says)];
    case 'list': return [block.items.map((item) => `- ${textOf(item)}`).join('\n')];
    case 'findings': return [block.items.map(findingItem).join('\n')];
    case 'bill': return [...block.groups.flatMap(groupParts), `**${block.total.label}: ${escaped(block.total.amount)}**`];
    case 'table': return [table(block.heads.map(({ text }) => text), block.heads.map(({ align }) => align), block.rows.map(({ cells, isMarked }) => cells.map((cell) => marked(textOf(cell), isMarked))))];
    case 'form': return [block.blanks.map(blankItem).join('\n')];
  }
}

function marked(text: string, isMarked: boolean): string {
  return isMarked && text !== '–' ? `**${text}**` : text;
}

function findingItem({ says, details, pictures }: FindingSaid, i: number): string {
  return [`${i + 1}. ${textOf(says)}`, ...details.map(textOf), ...pictures.map((one) => escaped(pictureText(one)))].join('\\\n   ');
}

function groupParts({ title, says, lines, hours, amount }: BillGroup): string[] {
  const rows = lines.map((line) => [`${escaped(line.title)}${line.detail.length === 0 ? '' : ` · ${textOf(line.detail)}`}`, line.hours ?? '', escaped(line.amount)]);
  const sum = lines.length < 2 ? [] : [[`**${title}**`, hours === undefined ? '' : `**${hours}**`, `**${escaped(amount)}**`]];
  return [`### ${title}`, textOf(says), table(['For', 'Hours', 'Amount'], ['words', 'figures', 'figures'], [...rows, ...sum])];
}

function table(heads: readonly string[], align: readonly ('words' | 'figures')[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(heads), line(align.map((one) => (one === 'words' ? '---' : '--:'))), ...rows.map(line)].join('\n');
}

function blankItem(blank: Blank): string {
  if (blank.kind === 'line') return `- ${blank.label}: ${'\\_'.repeat(24)}`;
  return `- ${blank.label}: ${blank.of.map((one) => `☐ ${one}`).join(' ')}`;
}
