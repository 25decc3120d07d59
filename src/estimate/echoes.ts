import type { Block, Problem } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';
import { noRate, noMarkup, otherCurrency, thousandsPoint, whichRate } from './money-rules.js';
import { unknownName } from './name-rules.js';
import type { Estimate } from './types.js';

/** What can't be told because it stands in files or on lines that could not be read. Those have their message. */
export interface Lost {
  /** A shared file is missing, of a newer form or not read yet: any name may be in it, and any rate or tax. */
  readonly files: boolean;
  /** Every word on lines of which nobody can tell what they are. */
  readonly words: ReadonlySet<string>;
}

/** Words that start lines below shop on which every total rests. */
const SHOP_WORDS = ['currency', 'rate', 'tax', 'fee', 'markup'];

/**
 * Takes out what only repeats another message: a name that a missing file may hold, work without a rate where the
 * rate's own line can't be read. One fault, one message. What such an echo stood on is returned as spoiled, so that
 * no total that needs it is called whole.
 */
export function withoutEchoes(problems: readonly Problem[], { shop, options }: Estimate, lost: Lost): { readonly problems: readonly Problem[]; readonly spoiled: ReadonlySet<Block> } {
  const spoiled = new Set<Block>();
  const own = shop.source?.record;
  const isUnsure = (word: string) => lost.files || lost.words.has(word) || own?.broken === true || (own?.children ?? []).some((child) => child.kind.word === word && (child.broken || lacksFigure(child)));
  let told = false;
  const isEcho = ({ code, at }: Problem): boolean => {
    switch (code) {
      case unknownName.code: return lost.files || lost.words.has(at.block.text.slice(at.start, at.end));
      case noMarkup.code: return isUnsure('markup');
      case otherCurrency.code:
      case thousandsPoint.code: return shop.currency.code === '' && (isUnsure('currency') || own?.values['currency'] !== undefined);
      case whichRate.code: return isUnsure('rate');
      case noRate.code: {
        const again = told; // a shop without rates is one fault, however much work there is
        told = true;
        return again || isUnsure('rate');
      }
      default: return false;
    }
  };
  const kept = problems.filter((one) => {
    const echo = isEcho(one);
    if (echo) spoiled.add(one.at.block);
    return !echo;
  });
  const shopLost = own === undefined && (lost.files || SHOP_WORDS.some((word) => lost.words.has(word)));
  if (shopLost) for (const option of options) spoiled.add(option.record.block);
  return { problems: kept, spoiled };
}

function lacksFigure({ values }: Record): boolean {
  return values['price'] === undefined && values['percent'] === undefined;
}
