import type { Option } from '../estimate/index.js';
import type { Comparison, Money, Weighed } from '../weigh/index.js';
import { moneyText } from './numbers.js';

/** What stands beside an option that a finding speaks against. */
export const RULED_OUT = 'ruled out';

/** The findings by their titles: `the finding “Bores scored” speaks`. */
export function findingsSpeak(findings: readonly string[]): string {
  const titles = findings.map((title) => `“${title}”`);
  const last = titles.pop() ?? '';
  return titles.length === 0 ? `the finding ${last} speaks` : `the findings ${titles.join(', ')} and ${last} speak`;
}

/** What speaks against an option, as a sentence without its end: `the finding “Bores scored” speaks against Used engine`. */
export function spokenAgainst({ title, ruledOutBy }: Pick<Option, 'title' | 'ruledOutBy'>): string {
  return `${findingsSpeak(ruledOutBy.map((one) => one.title))} against ${title}`;
}

/** The whole options that something found speaks against, each with what it would cost beside the cheapest of the others. */
export function ruledOutSentences({ options, ranking: [first], money }: Comparison): string[] {
  return options.filter(({ complete, option }) => complete && option.ruledOutBy.length > 0).map((one) => ruledOutSentence(one, first, money));
}

function ruledOutSentence({ option: { title, ruledOutBy }, inAll }: Weighed, first: Weighed | undefined, money: Money): string {
  const against = `${findingsSpeak(ruledOutBy.map((one) => one.title))} against it.`;
  if (first === undefined) return `${title} would cost ${moneyText(inAll.likely, money)}, but ${against}`;
  const more = inAll.likely.minus(first.inAll.likely);
  if (more.isZero()) return `${title} would cost as much, but ${against}`;
  return more.isNegative() ? `${title} would cost ${moneyText(more.negated(), money)} less, but ${against}` : `${title} would cost ${moneyText(more, money)} more, and ${against}`;
}
