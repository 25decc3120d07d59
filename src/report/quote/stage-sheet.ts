import { detailOf, billOf } from './bill.js';
import { figuresOf, type Figures } from './figures-said.js';
import { aboutFacts, authorisationForm, cautionsSection, findingsSection, isNothing, letterhead, rangeSaid, section, words } from './quote-sheet.js';
import { joined, own, say, type Block, type Said, type Section, type Sheet } from './sheet.js';
import type { StageQuote } from './stage-quote.js';

/** Getting in, where what goes back afterwards is not in the price. */
const GOING_IN = {
  title: 'Getting to the work',
  says: 'To reach what we must look at, other things first come off or the engine must be raised or taken out. Putting them back is not in this price: what it costs stands below.',
};

/**
 * The estimate of a stage in words. A customer asks of it: what do you do, what is broken by it, what do I owe if I say
 * no then, and do I pay it twice if I say yes.
 */
export function stageSheetOf(quote: StageQuote): Sheet {
  const figures = figuresOf(quote);
  const { stage, total, stop } = quote;
  return {
    ...letterhead(quote),
    heading: 'Written estimate',
    facts: aboutFacts(quote, figures),
    proposal: {
      label: 'What we do first', title: stage.title,
      facts: [{ label: 'Total', says: [own(figures.money(total))] }, { label: 'If you stop there and it is put back', says: say`${figures.money(stop)} in all` }],
    },
    sections: [
      findingsSection(quote, figures),
      section('work', 'What you pay for', [billOf(quote, figures, GOING_IN), ...rangeSaid(quote, figures)]),
      section('destroyed', 'Parts that this destroys', words(destroyedSaid(quote))),
      section('stop', 'If you stop there', stopBlocks(quote, figures)),
      section('then', 'If you go on', words(thenSaid(quote))),
      section('notes', 'Notes', quote.notes.map((note) => ({ kind: 'words', says: [own(note)] }))),
      cautionsSection(quote),
      section('rules', 'Check your local rules', words(['They come before what is written here: check your local rule on tear-down estimates.'])),
      authorisation(quote, figures),
    ].filter(({ blocks }) => blocks.length > 0),
  };
}

function destroyedSaid({ destroys }: StageQuote): Said {
  if (destroys.length === 0) return ['None that we know of.'];
  return [...joined(destroys.map((one) => say`${one}`), '; '), '. What is taken off cannot be fitted again: putting it back takes new ones, and they are priced below.'];
}

function stopBlocks({ total, putBack, stop }: StageQuote, figures: Figures): Block[] {
  const rows = [
    ...putBack.lines.map((line): readonly Said[] => {
      const about = joined([...(line.hours === undefined ? [] : [say`${figures.hours(line.hours)} h`]), ...[detailOf({ ...line, because: [] }, 'mixed', figures)].filter((one) => one.length > 0)], ', ');
      return [[...say`${line.title}`, ...(about.length === 0 ? [] : [' · ', ...about])], say`${figures.money(line.amount)}`];
    }),
    ...(isNothing(putBack.feesAndTax) ? [] : [[['Fees and tax on that'], say`${figures.money(putBack.feesAndTax)}`]]),
  ];
  return [
    ...words(say`When we have told you what we found, you can stop there. If everything is left as it is, you owe ${figures.money(total)}. If we put it back together, that adds ${figures.money(putBack.amount)}, and you owe ${figures.money(stop)} in all; the fault is then still there.`),
    ...(rows.length === 0 ? [] : [{
      kind: 'table' as const,
      heads: [{ text: 'Putting it back', align: 'words' as const }, { text: 'Amount', align: 'figures' as const }],
      rows: rows.map((cells) => ({ cells, isMarked: false })),
    }]),
  ];
}

function thenSaid({ options }: StageQuote): Said {
  if (options.length === 0) return [];
  const [one, ...others] = options as readonly [string, ...string[]];
  const ways = others.length === 0 ? say`“${one}”` : joined(options.map((title) => say`“${title}”`), ', ');
  return ['This work is then part of what you choose (', ...ways, '): it is in that total already and is not charged again.'];
}

function authorisation({ title, stage, total }: StageQuote, figures: Figures): Section {
  return section('authorisation', 'Authorisation', [
    ...words(say`To be filled in when this is authorised, before anything is taken apart: ${title}. ${stage.title}, quoted at ${figures.money(total)}. It authorises nothing beyond that.`),
    authorisationForm,
  ]);
}
