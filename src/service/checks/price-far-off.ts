import { Places, type Rule } from '../../language/index.js';
import type { Part } from '../../estimate/index.js';
import { moneyText } from '../../report/index.js';
import { clip, type Amount } from '../../vocabulary/index.js';
import { found, wholeCheck, type Found } from './check.js';
import { example } from './example.js';
import type { View } from './view.js';

/** A slip of the decimal point makes a price ten times too high or too low. */
const TIMES = 10;

const priceFarOff: Rule<{ readonly part: string; readonly price: string; readonly usual: string }> = {
  code: 'price-far-off', family: 'money', severity: 'warning', title: 'A price far from the usual one',
  message: ({ part, price, usual }) => ({
    what: `“${clip(part)}” is ${price} here, and ${usual} on its other line.`,
    why: `A difference of ${TIMES} times is usually a decimal point that slipped.`,
    instead: 'Correct the one that is wrong, or give the line another title.',
  }),
  example: example({ lines: 'part oil "Engine oil" 6 qt at 7.90 new\n', one: '  labour "Front seal" 2 h\n    because seen\n    uses oil\n' }).replace('    uses oil\n', '').replace('option stop "Stop"\n', 'option two "Mend it too"\n  warranty 12 mo\n  fit oil\noption three "Mend it again"\n  warranty 12 mo\n  part "Engine oil" 6 qt at «79.00» new\n'),
};

/** Compares parts of options with the named part of the same title: the shop’s own usual price, most often. */
export const priceCheck = wholeCheck(priceFarOff, function* find(view) {
  for (const { parts, record } of view.estimate.options) {
    for (const part of unnamed.itemsIn(parts, record)) {
      if (!view.isOwn(part)) continue;
      for (const usual of titled(view.estimate.parts).get(key(part.title)) ?? []) if (usual.condition === part.condition) yield* compared(part, usual, view);
    }
  }
});

const unnamed = new Places<Part>(({ name }) => name === undefined);

/** Kept by the list: a keystroke in a job leaves the named parts as they are. */
const byTitle = new WeakMap<readonly Part[], ReadonlyMap<string, readonly Part[]>>();

function titled(parts: readonly Part[]): ReadonlyMap<string, readonly Part[]> {
  let found = byTitle.get(parts) as Map<string, Part[]> | undefined;
  if (found !== undefined) return found;
  found = new Map();
  for (const part of parts) {
    const same = found.get(key(part.title));
    if (same === undefined) found.set(key(part.title), [part]);
    else same.push(part);
  }
  byTitle.set(parts, found);
  return found;
}

function* compared(part: Part, usual: Part, view: View): Iterable<Found> {
  for (const word of ['price', 'cost'] as const) {
    const [own, other] = [part[word], usual[word]];
    if (own === undefined || other === undefined || !farApart(own, other)) continue;
    const show = (amount: Amount) => moneyText(amount.likely, view.comparison.money);
    yield found(priceFarOff, own.at, { part: part.title, price: show(own), usual: show(other) }, { at: other.at, says: 'The other line' });
  }
}

function farApart(a: Amount, b: Amount): boolean {
  return a.likely.gte(b.likely.times(TIMES)) || b.likely.gte(a.likely.times(TIMES));
}

function key(title: string): string {
  return title.trim().toLowerCase();
}
