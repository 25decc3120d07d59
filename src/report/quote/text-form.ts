import { plain } from '../plain.js';
import { widthOf } from '../table.js';
import type { BillGroup, Blank, Block, Fact, FindingSaid, Said, Section, Sheet } from './sheet.js';
import type { QuotePicture } from './types.js';
import { absentWords } from './words.js';

/** No line of the text form is wider. */
export const TEXT_WIDTH = 80;

const HOURS_WIDTH = 7;

/** A quote as plain text, for mail and the terminal. */
export function quoteText({ shop, heading, title, facts, proposal, sections }: Sheet): string {
  const head = [
    ...(shop.name === '' ? [] : fold(plain(shop.name))),
    ...shop.lines.flatMap((line) => fold(plain(line))),
    ...(shop.name === '' && shop.lines.length === 0 ? [] : ['']),
    heading.toUpperCase(),
    ...fold(plain(title)),
    '',
    ...factLines(facts),
    ...(facts.length === 0 ? [] : ['']),
    '─'.repeat(TEXT_WIDTH),
    ...fold(`${proposal.label}: ${plain(proposal.title)}`),
    ...factLines(proposal.facts),
    '─'.repeat(TEXT_WIDTH),
  ];
  return `${[...head, ...sections.flatMap(sectionLines)].map((line) => line.trimEnd()).join('\n')}\n`;
}

function textOf(said: Said): string {
  return said.map((part) => plain(typeof part === 'string' ? part : part.own)).join('');
}

function factLines(facts: readonly Fact[]): string[] {
  const width = Math.max(0, ...facts.map(({ label }) => label.length)) + 2;
  return facts.flatMap(({ label, says }) => hung(label.padEnd(width), fold(textOf(says), TEXT_WIDTH - width)));
}

/** Lines behind a lead; the later ones stand below the first. */
function hung(lead: string, lines: readonly string[]): string[] {
  return lines.map((line, i) => `${i === 0 ? lead : ' '.repeat(widthOf(lead))}${line}`);
}

function sectionLines({ title, blocks }: Section): string[] {
  return ['', title.toUpperCase(), '', ...blocks.flatMap((block, i) => [...(i === 0 ? [] : ['']), ...blockLines(block)])];
}

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case 'words': return fold(textOf(block.says));
    case 'list': return block.items.flatMap((item) => hung('- ', fold(textOf(item), TEXT_WIDTH - 2)));
    case 'findings': return block.items.flatMap((item, i) => hung(`${i + 1}. `.padStart(4), findingLines(item)));
    case 'bill': return [...block.groups.flatMap(groupLines), rule('═'), ...row(block.total.label.toUpperCase(), '', block.total.amount)];
    case 'table': return tableLines(block);
    case 'form': return block.blanks.flatMap(blankLines);
  }
}

function findingLines({ says, details, pictures }: FindingSaid): string[] {
  return [...fold(textOf(says), TEXT_WIDTH - 4), ...details.flatMap((one) => fold(textOf(one), TEXT_WIDTH - 4)), ...pictures.flatMap((one) => fold(pictureText(one), TEXT_WIDTH - 4))];
}

/** Text can't show a picture; it names the file. */
export function pictureText(picture: QuotePicture): string {
  return picture.kind === 'shown' ? `Picture: ${plain(picture.name)}` : `Picture ${plain(picture.name)}: ${absentWords[picture.why]}.`;
}

function groupLines({ title, says, lines, hours, amount }: BillGroup): string[] {
  return [
    title,
    ...fold(textOf(says), TEXT_WIDTH - 2).map((line) => `  ${line}`),
    ...lines.flatMap((line) => row(`${plain(line.title)}${line.detail.length === 0 ? '' : ` · ${textOf(line.detail)}`}`, line.hours === undefined ? '' : `${line.hours} h`, line.amount)),
    ...(lines.length < 2 ? [] : [rule('─'), ...row(`  ${title}`, hours === undefined ? '' : `${hours} h`, amount)]),
    '',
  ];
}

/** What is paid for, to the left; hours and amount to the right of its first line. */
function row(words: string, hours: string, amount: string): string[] {
  const right = `${left(hours, HOURS_WIDTH)}  ${left(amount, 13)}`;
  const width = TEXT_WIDTH - widthOf(right) - 2;
  return fold(words, width).map((line, i) => (i === 0 ? `${line}${' '.repeat(Math.max(0, width - widthOf(line)))}  ${right}` : `  ${line}`));
}

function left(text: string, width: number): string {
  return `${' '.repeat(Math.max(0, width - widthOf(text)))}${text}`;
}

function rule(character: string): string {
  const width = HOURS_WIDTH + 2 + 13;
  return `${' '.repeat(TEXT_WIDTH - width)}${character.repeat(width)}`;
}

/** Each row as a few lines: its first cell, then the others with their heads. Wide tables don't fit 80 columns. */
function tableLines({ heads, rows }: Extract<Block, { readonly kind: 'table' }>): string[] {
  return rows.flatMap(({ cells }) => cells.flatMap((cell, i) => {
    if (i === 0) return hung('- ', fold(textOf(cell), TEXT_WIDTH - 2));
    return hung(`    ${`${heads[i]?.text ?? ''}:`.padEnd(13)}`, fold(textOf(cell), TEXT_WIDTH - 17));
  }));
}

function blankLines(blank: Blank): string[] {
  if (blank.kind === 'line') return [`${blank.label.padEnd(16)}${'_'.repeat(44)}`, ''];
  return [`${blank.label.padEnd(16)}${blank.of.map((one) => `[ ] ${one}`).join('   ')}`, ''];
}

/** Breaks at spaces, and inside a word that is wider than a line by itself. Figures keep their inner spaces. */
function fold(text: string, width = TEXT_WIDTH): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[ \t]+/).filter((one) => one !== '')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && widthOf(line) + widthOf(letter) > width) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return line === '' ? lines.length === 0 ? [''] : lines : [...lines, line];
}
