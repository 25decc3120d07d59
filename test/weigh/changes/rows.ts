import { changed } from '../../changes/both.js';

export const SHOP = `steelyard 1
shop "Bay"
  currency USD
  rate bench "Bench" 120.00 usual
  rate fine "Fine work" 150.00
  markup 50% to 100.00
  markup 30%
  markup 20% on sublets
`;
export const JOB = `use "shop.yard"
estimate "E-1"
access open "Front off"
  remove 2.0 h
  refit 1.0 h
labour pump "Pump: renew"
  takes 8.0 h
  takes 2.0 h with open
option mend "Mend it"
  do pump
`;

/** Each change and what follows, with what it moves in the total of each option, and in its cost in all where that is other. */
export function rows(job: string, shop = SHOP, before = JOB, shopBefore = SHOP): readonly string[] {
  const found = changed({ 'job.yard': `steelyard 1\n${before}`, 'shop.yard': shopBefore }, { 'job.yard': `steelyard 1\n${job}`, 'shop.yard': shop });
  const amounts = (effects: (typeof found.changes)[number]['effects']) => effects.map(({ total, inAll }) => (total.eq(inAll) ? total.toFixed(2) : `${total.toFixed(2)} (${inAll.toFixed(2)})`)).join(' ');
  return [
    ...found.changes.map(({ sort, before: was, after, link, effects }) => `${sort} ${(after ?? was)?.title ?? ''}${link === undefined ? '' : ` by ${link.by.title}`}: ${amounts(effects)}`),
    ...found.follows.map(({ sort, title, effects }) => `${sort} ${title}: ${amounts(effects)}`),
  ];
}
