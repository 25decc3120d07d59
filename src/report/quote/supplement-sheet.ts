import { detailOf, less } from './bill.js';
import { figuresOf, type Figures } from './figures-said.js';
import { aboutFacts, authorisationForm, findingsSection, isNothing, letterhead, section, words } from './quote-sheet.js';
import { say, type Block, type Fact, type Said, type Section, type Sheet } from './sheet.js';
import { backRows, besideFacts, depositsMovedSection, leftOutSection, readyThenSection } from './supplement-besides-words.js';
import type { SupplementLine } from './supplement-lines.js';
import type { Supplement, WhyUnlisted } from './supplement.js';

/** A supplement in words: what was agreed, what is new, what it comes to now, and room to agree to that. */
export function supplementSheetOf(supplement: Supplement): Sheet {
  const figures = figuresOf(supplement);
  const { option, findings } = supplement;
  const found = findingsSection(supplement, figures);
  return {
    ...letterhead(supplement),
    heading: 'Supplement to a written estimate',
    facts: [...aboutFacts(supplement, figures), { label: 'Authorised', says: authorisedSaid(supplement, figures) }],
    proposal: { label: 'What is done', title: option.title, facts: moneyFacts(supplement, figures) },
    sections: [
      ...(findings.length === 0 ? [] : [{ ...found, title: 'What we found since' }]),
      section('new', 'What is new', newBlocks(supplement, figures)),
      depositsMovedSection(supplement, figures),
      readyThenSection(supplement, figures),
      leftOutSection(supplement),
      section('rules', 'Check your local rules', words(['They come before what is written here: check your local rule on written estimates and authorisation.'])),
      authorisation(supplement, figures),
    ].filter(({ blocks }) => blocks.length > 0),
  };
}

function authorisedSaid({ authorised: { amount, on, by } }: Supplement, figures: Figures): Said {
  return [...say`${figures.money(amount)}`, ...(on === undefined ? [] : say` on ${figures.day(on)}`), ...(by === undefined ? [] : say` by ${by}`)];
}

function moneyFacts(supplement: Supplement, figures: Figures): Fact[] {
  const { authorised, total, more } = supplement;
  return [
    { label: 'Authorised so far', says: say`${figures.money(authorised.amount)}` },
    { label: 'Difference', says: say`${signed(more, figures)}` },
    { label: 'New total', says: say`${figures.money(total)}` },
    ...besideFacts(supplement, figures),
  ];
}

function signed(amount: string, figures: Figures): string {
  return amount.startsWith('-') || isNothing(amount) ? figures.money(amount) : `+${figures.money(amount)}`;
}

const KINDS: Readonly<Record<SupplementLine['kind'], string>> = { came: 'added', went: 'no longer done', moved: 'changed', renamed: 'renamed' };

/** What became of a line, and what it was called where that is another title. */
function becameSaid({ kind, was }: SupplementLine): Said {
  return was === undefined ? [` (${KINDS[kind]})`] : [` (${KINDS[kind]}; before: `, ...say`${was}`, ')'];
}

function newBlocks(supplement: Supplement, figures: Figures): Block[] {
  const { news, authorised, more, total: now } = supplement;
  if (news.kind === 'unlisted') return words(say`What is new is not listed line by line: ${whyWords[news.why]}. The new total and what was authorised differ by ${signed(more, figures)}.`);
  const { lines, taxes, total } = news;
  const amounts = (before: string | undefined, after: string | undefined, differs: string): Said[] => [
    before === undefined ? ['–'] : say`${figures.money(before)}`,
    after === undefined ? ['–'] : say`${figures.money(after)}`,
    say`${signed(differs, figures)}`,
  ];
  const rows = [
    ...lines.map((one) => {
      const { line, before, now: after, more: differs } = one;
      const detail = detailOf(line, 'mixed', figures);
      return [[...say`${line.title}`, ...(detail.length === 0 ? [] : [' · ', ...detail]), ...becameSaid(one)], ...amounts(before, after, differs)];
    }),
    ...taxes.map(({ title, before, now: after, more: differs }) => [say`${title}`, ...amounts(before, after, differs)]),
  ];
  const apart = total === authorised.amount ? [] : words(say`The version that this is compared with comes to ${figures.money(total)}; ${figures.money(authorised.amount)} was authorised.`);
  const back = backRows(supplement);
  const same = rows.length === 0 ? words(['Nothing in it comes to another amount than in the version before.']) : [];
  if (rows.length === 0 && back.every((one) => isNothing(one.more))) return [...same, ...apart];
  const whole = { cells: [['All of it, with what stays as it was'], ...amounts(total, now, less(now, total))], isMarked: true };
  return [...same, {
    kind: 'table',
    heads: [{ text: 'What', align: 'words' }, { text: 'Before', align: 'figures' }, { text: 'Now', align: 'figures' }, { text: 'Difference', align: 'figures' }],
    rows: [
      ...rows.map((cells) => ({ cells, isMarked: false })),
      whole,
      ...back.map(({ label, before, now: after, more: differs }) => ({ cells: [[label], ...amounts(before, after, differs)], isMarked: false })),
    ],
  }, ...apart];
}

const whyWords: Readonly<Record<WhyUnlisted, string>> = {
  'no-version': 'the version that was authorised was not at hand when this was written',
  'no-option': 'the version that was authorised does not have this work by that name',
  incomplete: 'the version that was authorised has a line that can’t be read',
  'other-currency': 'the version that was authorised is in another currency',
};

function authorisation({ title, option, total, authorised }: Supplement, figures: Figures): Section {
  return section('authorisation', 'Authorisation of the new total', [
    ...words(say`To be filled in when the new total is authorised: ${title}. ${option.title}, ${figures.money(total)} in all; it takes the place of the ${figures.money(authorised.amount)} that was authorised before.`),
    authorisationForm,
  ]);
}
