import { cautionLines, estimateNotice } from '../cautions.js';
import { billOf, detailOf } from './bill.js';
import { figuresOf, type Figures } from './figures-said.js';
import { joined, own, say, type Block, type Fact, type FindingSaid, type Said, type Section, type Sheet } from './sheet.js';
import type { Quote, QuoteChance, QuoteDeposit, QuoteFinding, QuoteHead, QuoteOption, QuoteReady } from './types.js';
import { COMPRESSION_MEANS, debrisWords, LEAKAGE_MEANS, ruleWords } from './words.js';

/**
 * A quote in words. The order is that of a reader's questions: what is it about, what does it cost, what was found,
 * what is done for the money, what comes back, when is it ready, what is not in it, what else could be done.
 */
export function sheetOf(quote: Quote): Sheet {
  const figures = figuresOf(quote);
  const { option } = quote;
  return {
    ...letterhead(quote),
    heading: 'Written estimate',
    facts: aboutFacts(quote, figures),
    proposal: { label: 'What we propose', title: option.title, facts: proposalFacts(quote, figures) },
    sections: [
      findingsSection(quote, figures),
      section('work', 'What you pay for', [billOf(quote, figures), ...rangeSaid(quote, figures), ...authorisedBefore(quote, figures)]),
      depositSection(quote, figures),
      section('ready', 'When it is ready', words(readySaid(quote, figures))),
      section('warranty', 'Warranty', words(warrantySaid(quote, figures))),
      notIncluded(quote, figures),
      couldBeFound(quote, figures),
      weighedSection(quote, figures),
      section('coverage', 'Someone else may pay', words(quote.maybeCovered.length === 0 ? [] : [...joined(quote.maybeCovered.map((one) => say`“${one}”`), ', '), ' may apply to this vehicle. Before any work starts, have it looked up by the vehicle’s number (VIN): who pays is not for this page to say.'])),
      section('notes', 'Notes', quote.notes.map((note) => ({ kind: 'words', says: [own(note)] }))),
      cautionsSection(quote),
      rulesSection(quote),
      quote.repairs ? authorisation(quote, figures) : leftAsItIs(quote, figures),
    ].filter(({ blocks }) => blocks.length > 0),
  };
}

/** Whose page it is and what it is about, in the language of its words. */
export function letterhead({ locale, shop, title }: QuoteHead): Pick<Sheet, 'language' | 'shop' | 'title'> {
  return {
    language: /^en\b/.test(locale) ? locale : 'en',
    shop: { name: shop.name, lines: [...shop.address, ...(shop.phone === undefined ? [] : [shop.phone])] },
    title,
  };
}

export function section(key: string, title: string, blocks: readonly Block[]): Section {
  return { key, title, blocks };
}

/** One paragraph, or none where there is nothing to say. */
export function words(says: Said): Block[] {
  return says.length === 0 ? [] : [{ kind: 'words', says }];
}

export function aboutFacts({ vehicle, written, validUntil }: QuoteHead, figures: Figures): Fact[] {
  return [
    ...(vehicle === undefined ? [] : [{ label: 'Vehicle', says: [own(vehicle.title)] }]),
    ...(vehicle?.vin === undefined ? [] : [{ label: 'VIN', says: [own(vehicle.vin)] }]),
    ...(vehicle?.odometer === undefined ? [] : [{ label: 'Odometer', says: [own(`${figures.number(vehicle.odometer.value)} ${vehicle.odometer.unit}`)] }]),
    ...(written === undefined ? [] : [{ label: 'Written on', says: [own(figures.day(written))] }]),
    ...(validUntil === undefined ? [] : [{ label: 'Valid until', says: [own(figures.day(validUntil))] }]),
  ];
}

function proposalFacts({ total, comesBack, ready, warranty }: Quote, figures: Figures): Fact[] {
  return [
    { label: 'Total', says: [own(figures.money(total))] },
    ...(comesBack === undefined || isNothing(comesBack) ? [] : [{ label: 'Of that comes back', says: say`${figures.money(comesBack)}` }]),
    ...(ready === undefined ? [] : [{ label: 'Ready', says: [own(readyOn(ready, figures))] }]),
    ...(warranty === undefined ? [] : [{ label: 'Warranty', says: [own(figures.wait(warranty))] }]),
  ];
}

/** The day, or how long it takes where there is no date to count from. */
export function readyOn({ days, date }: Pick<QuoteReady, 'days' | 'date'>, figures: Figures): string {
  return date === undefined ? figures.workingDays(days) : figures.weekday(date);
}

export function isNothing(amount: string): boolean {
  return /^-?0*(\.0*)?$/.test(amount);
}

// What we found ----------------------------------------------------------------------------------------------------

export function findingsSection({ findings }: QuoteHead, figures: Figures): Section {
  if (findings.length === 0) return section('findings', '', []);
  const means = [...(findings.some(({ compression }) => compression !== undefined) ? [COMPRESSION_MEANS] : []), ...(findings.some(({ leakage }) => leakage !== undefined) ? [LEAKAGE_MEANS] : [])];
  return section('findings', 'What we found', [{ kind: 'findings', items: findings.map((one) => findingSaid(one, figures)) }, ...words(means.length === 0 ? [] : [means.join(' ')])]);
}

function findingSaid({ title, seenBy, compression, leakage, debris, pictures }: QuoteFinding, figures: Figures): FindingSaid {
  const inOrder = (values: readonly string[]) => values.map(figures.number).join(' · ');
  return {
    says: [own(title)],
    details: [
      ...(seenBy === undefined ? [] : [say`How it was seen: ${seenBy}.`]),
      ...(compression === undefined ? [] : [say`Compression of the cylinders in order: ${inOrder(compression.values)} ${compression.unit}.`]),
      ...(leakage === undefined ? [] : [say`Leakage of the cylinders in order: ${inOrder(leakage)} %.`]),
      ...(debris === undefined ? [] : [[debrisWords[debris]]]),
    ],
    pictures,
  };
}

// What it costs ----------------------------------------------------------------------------------------------------

export function rangeSaid({ range: spread, total }: Pick<Quote, 'range' | 'total'>, figures: Figures): Block[] {
  if (spread === undefined) return [];
  return words(say`The total of ${figures.money(total)} is what we quote. Some of its hours or prices may vary: if they all come in low, the same work comes to ${figures.money(spread.low)}; if they all come in high, to ${figures.money(spread.high)}.`);
}

function authorisedBefore({ authorisedBefore: before }: Quote, figures: Figures): Block[] {
  if (before === undefined) return [];
  return words(say`Of this total, ${figures.money(before.amount)} is authorised already, for what was done before the decision; it is not charged twice. Left to authorise: ${figures.money(before.left)}.`);
}

function depositSection({ deposits, kept }: Quote, figures: Figures): Section {
  const keptSaid = kept.map(({ title, worth }) => (worth === undefined ? say`${title}` : say`${title}, worth ${figures.money(worth)}`));
  return section('deposit', deposits.length === 0 ? 'What is kept of the old unit' : 'Deposit: what comes back', [
    ...(deposits.length === 0 ? [] : [{ kind: 'list' as const, items: deposits.map((one) => depositSaid(one, figures)) }]),
    ...words(keptSaid.length === 0 ? [] : ['Kept of the old unit: ', ...joined(keptSaid, '; '), '.']),
  ]);
}

export function depositSaid({ title, charge, refund, taxBack, taxKept, until, late, less }: QuoteDeposit, figures: Figures): Said {
  const pays = say`${title}: ${figures.money(charge)} is paid now. `;
  const kept = isNothing(taxKept) ? [] : say` ${figures.money(taxKept)} of tax on it does not come back.`;
  if (late) return [...pays, ...say`The old unit must go back by ${figures.day(until ?? '')}. The work is planned to end later, so nothing is expected back.`, ...kept];
  const tax = isNothing(taxBack) ? [] : say`, and ${figures.money(taxBack)} of tax with it`;
  const condition = until === undefined ? ['if the old unit goes back complete and put together'] : say`if the old unit goes back complete and put together by ${figures.day(until)}`;
  const taken = less.map((one) => (one.title === undefined ? say`${figures.money(one.amount)} for what is damaged or missing` : say`${figures.money(one.amount)} for ${one.title}, which is kept`));
  return [...pays, ...say`${figures.money(refund)} comes back`, ...tax, ', ', ...condition, ...(taken.length === 0 ? [] : ['; taken off already: ', ...joined(taken, ', ')]), '.', ...kept, ' What is missing or damaged makes it less.'];
}

export function readySaid({ ready }: Pick<Quote, 'ready'>, figures: Figures): Said {
  if (ready === undefined) return [];
  const { days, start, date, nineInTen, answer } = ready;
  const says = answer === undefined ? [] : say` if we have your answer within ${figures.wait(answer)} of telling you what we found`;
  const when = date === undefined || start === undefined ? say`We expect the work to take ${figures.workingDays(days)}` : say`We expect it to be ready on ${figures.weekday(date)}, ${figures.workingDays(days)} counted from ${figures.day(start)}`;
  const sure = nineInTen === undefined ? [] : nineInTen === date ? [' In 9 of 10 cases we expect it on that day or earlier.'] : say` In 9 of 10 cases we expect it by ${figures.weekday(nineInTen)}, with what may turn up.`;
  return [...when, ...says, '.', ...sure, ' This is what we expect, not a promise.'];
}

function warrantySaid({ warranty, groups }: Quote, figures: Figures): Said {
  const ofParts = groups.some(({ lines }) => lines.some((line) => line.warranty !== undefined));
  const more = ofParts ? ' Parts with a warranty of their own say so on their line.' : '';
  return warranty === undefined ? [`No warranty on the work is stated here.${more}`] : [...say`${figures.wait(warranty)} on the work as quoted.`, more];
}

// What it leaves out -----------------------------------------------------------------------------------------------

function notIncluded({ leavesOut, notDone }: Quote, figures: Figures): Section {
  const items: Said[] = [
    ...leavesOut.map((one) => [own(one)]),
    ...notDone.map(({ title, now, alone }) => (now === undefined || alone === undefined
      ? say`${title}.`
      : say`${title}. Done now, while everything is open, it would add ${figures.money(now)}; on its own at a later time it would come to ${figures.money(alone)} at today’s prices.`)),
  ];
  return section('not-included', 'Not included', items.length === 0 ? [] : [{ kind: 'list', items }]);
}

function couldBeFound({ couldBeFound: chances }: Quote, figures: Figures): Section {
  if (chances.length === 0) return section('could-be-found', '', []);
  return section('could-be-found', 'What could still be found', [
    ...words(['Some things show only when the work is open. They are not in the total. If one of them turns up, this is what it would add, taxes and fees included.']),
    {
      kind: 'table',
      heads: [{ text: 'What', align: 'words' }, { text: 'Made up of', align: 'words' }, { text: 'Would add', align: 'figures' }],
      rows: chances.map((one) => ({ cells: [chanceTitle(one), chanceMade(one, figures), say`${figures.money(one.amount)}`], isMarked: false })),
    },
  ]);
}

function chanceTitle({ title, after }: QuoteChance): Said {
  return after === undefined ? [own(title)] : say`${title} (only after: ${after})`;
}

function chanceMade({ lines, feesAndTax }: QuoteChance, figures: Figures): Said {
  const made = lines.map((line): Said => {
    const about = joined([...(line.hours === undefined ? [] : [say`${figures.hours(line.hours)} h`]), ...[detailOf({ ...line, because: [] }, 'mixed', figures)].filter((one) => one.length > 0)], ', ');
    return [...say`${line.title}`, ...(about.length === 0 ? [] : [' (', ...about, ')']), ...say` ${figures.money(line.amount)}`];
  });
  return joined([...made, ...(isNothing(feesAndTax) ? [] : [say`fees and tax ${figures.money(feesAndTax)}`])], '; ');
}

function weighedSection({ weighed }: Quote, figures: Figures): Section {
  if (weighed.length < 2) return section('weighed', '', []);
  const returns = weighed.some(({ comesBack }) => comesBack !== undefined && !isNothing(comesBack));
  const cells = (one: QuoteOption): Said[] => [
    [...(one.isQuoted ? say`${one.title} (this estimate)` : [own(one.title)]), ...ruledOutSaid(one)],
    say`${figures.money(one.total)}`,
    ...(returns ? [one.comesBack === undefined || isNothing(one.comesBack) ? ['–'] : say`${figures.money(one.comesBack)}`] : []),
    one.ready === undefined ? (one.days === undefined ? ['–'] : say`${figures.workingDays(one.days)}`) : say`${figures.day(one.ready)}`,
    one.warranty === undefined ? ['–'] : say`${figures.wait(one.warranty)}`,
  ];
  return section('weighed', 'The ways out that we weighed', [{
    kind: 'table',
    heads: [{ text: 'Way out', align: 'words' }, { text: 'Total', align: 'figures' }, ...(returns ? [{ text: 'Comes back', align: 'figures' as const }] : []), { text: 'Ready', align: 'figures' }, { text: 'Warranty', align: 'figures' }],
    rows: weighed.map((one) => ({ cells: cells(one), isMarked: one.isQuoted })),
  }]);
}

/** A way out that something found speaks against says so beside its name. */
function ruledOutSaid({ ruledOutBy }: QuoteOption): Said {
  return ruledOutBy.length === 0 ? [] : ['; ruled out: ', ...joined(ruledOutBy.map((one) => say`“${one}”`), ', ')];
}

// What comes first, and room to sign -------------------------------------------------------------------------------

export function cautionsSection({ cautions }: Pick<Quote, 'cautions'>): Section {
  return section('cautions', 'Cautions', [
    ...words(estimateNotice.slice(0, 1)),
    ...(cautions.length === 0 ? [] : [{ kind: 'list' as const, items: cautionLines(cautions).map((one) => [one]) }]),
  ]);
}

function rulesSection({ ruleTypes }: Quote): Section {
  return section('rules', 'Check your local rules', [
    ...words(['They come before what is written here. Types of rule to look up:']),
    { kind: 'list', items: ruleTypes.map((type) => [ruleWords[type]]) },
  ]);
}

const UP_TO = 'Amount up to';

/** Room to authorise by hand. */
export const authorisationForm: Extract<Block, { readonly kind: 'form' }> = {
  kind: 'form',
  blanks: [
    { kind: 'line', label: 'Name' },
    { kind: 'line', label: UP_TO },
    { kind: 'line', label: 'Date and time' },
    { kind: 'choice', label: 'How', of: ['signature', 'telephone, number called:'] },
    { kind: 'line', label: 'Signature' },
    { kind: 'line', label: 'For the shop' },
  ],
};

function authorisation({ title, option, total }: Quote, figures: Figures): Section {
  return section('authorisation', 'Authorisation', [
    ...words(say`To be filled in when the work is authorised: ${title}. ${option.title}, quoted at ${figures.money(total)}.`),
    authorisationForm,
  ]);
}

/**
 * Where nothing is repaired there is no work to authorise: what is signed is that the customer knew the offer and declined
 * (common practice).
 */
function leftAsItIs({ title, option, total }: Quote, figures: Figures): Section {
  const owed = isNothing(total) ? [] : say` ${figures.money(total)} is owed all the same, for what is listed above.`;
  return section('authorisation', 'No repair', [
    ...words([...say`To be filled in when nothing is to be repaired: ${title}. ${option.title}. Whoever signs has read this estimate, and authorises no repair; the vehicle is left as it stands.`, ...owed]),
    { kind: 'form', blanks: authorisationForm.blanks.filter(({ label }) => label !== UP_TO) },
  ]);
}
