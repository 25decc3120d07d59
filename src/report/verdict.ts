import type { Comparison, Weighed } from '../weigh/index.js';
import { hoursText, moneyText } from './numbers.js';

/** The answer in one sentence or two, with its amounts; what stops it where there is none. */
export function verdict(comparison: Comparison): string {
  const { options, ranking } = comparison;
  if (options.length === 0) return 'There is no option to weigh yet.';
  const unfinished = options.filter((option) => !option.complete);
  const left = unfinished.length === 0 ? '' : ` Not weighed until ${unfinished.length === 1 ? 'its lines' : 'their lines'} can be read: ${unfinished.map((one) => one.option.title).join(', ')}.`;
  const [first, second] = ranking;
  if (first === undefined) return `No option can be weighed yet.${left}`;
  const money = comparison.money;
  const cost = `${first.option.title} costs ${moneyText(first.inAll.likely, money)}${addsWorth(first) ? ' in all, counting the worth given up' : ''}`;
  if (second === undefined) return `${cost}. There is nothing to compare it with.${left}`;
  const margin = second.inAll.likely.minus(first.inAll.likely);
  const lead = margin.isZero()
    ? `${cost}, to the cent as much as ${second.option.title}`
    : `${cost}: ${moneyText(margin, money)} less than the next, ${second.option.title}`;
  return `${lead}. ${accessSentence(first, comparison)}${closeSentence(first, second, comparison)}${left}`.trim();
}

function addsWorth(weighed: Weighed): boolean {
  return weighed.givenUp !== undefined && !weighed.givenUp.likely.isZero();
}

function accessSentence(first: Weighed, { money }: Comparison): string {
  const { penalty } = first;
  if (penalty.money.likely.isZero()) return 'Nothing of that is paid for getting at the work.';
  return `Getting at the work makes ${moneyText(penalty.money.likely, money)} of that (${hoursText(penalty.hours.likely)} h).`;
}

/** Says so where the ranges overlap: a lead that a single bad hour can eat is no clear lead. */
function closeSentence(first: Weighed, second: Weighed, { money }: Comparison): string {
  if (first.inAll.high.lte(second.inAll.low)) return '';
  return ` The ranges overlap: if everything comes in high it is ${moneyText(first.inAll.high, money)}, and the next, if everything comes in low, ${moneyText(second.inAll.low, money)}.`;
}
