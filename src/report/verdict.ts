import type { Comparison, Money, Weighed } from '../weigh/index.js';
import { hoursText, moneyText } from './numbers.js';
import { ruledOutSentences } from './ruled-out.js';

/** The answer in one sentence or two, with its amounts; what stops it where there is none. */
export function verdict(comparison: Comparison): string {
  const { options, ranking, money } = comparison;
  if (options.length === 0) return 'There is no option to weigh yet.';
  const left = unfinishedSentence(comparison);
  const [first, second] = ranking;
  const against = ruledOutSentences(comparison);
  if (first === undefined) return joined([against.length === 0 ? 'No option can be weighed yet.' : 'No option is left to choose.', ...against, left]);
  if (second === undefined) return joined([`${costWords(first, money)}.${against.length === 0 ? ' There is nothing to compare it with.' : ''}`, ...against, left]);
  return joined([leadSentence(first, second, money), accessSentence(first, comparison), ...against, closeSentence(first, second, comparison), left]);
}

function joined(sentences: readonly string[]): string {
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** Which option costs least, and by how much. */
export function leadSentence(first: Weighed, second: Weighed, money: Money): string {
  const margin = second.inAll.likely.minus(first.inAll.likely);
  if (margin.isZero()) return `${costWords(first, money)}, to the cent as much as ${second.option.title}.`;
  return `${costWords(first, money)}: ${moneyText(margin, money)} less than the next, ${second.option.title}.`;
}

function costWords(weighed: Weighed, money: Money): string {
  return `${weighed.option.title} costs ${moneyText(weighed.inAll.likely, money)}${addsWorth(weighed) ? ' in all, counting the worth given up' : ''}`;
}

function addsWorth(weighed: Weighed): boolean {
  return weighed.givenUp !== undefined && !weighed.givenUp.likely.isZero();
}

export function unfinishedSentence({ options }: Comparison): string {
  const unfinished = options.filter((option) => !option.complete);
  if (unfinished.length === 0) return '';
  return `Not weighed until ${unfinished.length === 1 ? 'its lines' : 'their lines'} can be read: ${unfinished.map((one) => one.option.title).join(', ')}.`;
}

export function accessSentence(first: Weighed, { money }: Comparison): string {
  const { penalty } = first;
  if (penalty.money.likely.isZero()) return 'Nothing of that is paid for getting at the work.';
  return `Getting at the work makes ${moneyText(penalty.money.likely, money)} of that (${hoursText(penalty.hours.likely)} h).`;
}

/** Says so where the ranges overlap: a lead that a single bad hour can eat is no clear lead. */
function closeSentence(first: Weighed, second: Weighed, { money }: Comparison): string {
  if (first.inAll.high.lte(second.inAll.low)) return '';
  return `The ranges overlap: if everything comes in high ${first.option.title} is ${moneyText(first.inAll.high, money)}, and the next, if everything comes in low, ${moneyText(second.inAll.low, money)}.`;
}
