import { dayOf, isoOf, type NamedKind } from '../../estimate/index.js';
import { formatVersion, kinds } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import { nearbyFiles } from './paths.js';
import { fromTemplate } from './snippet.js';

/** A shop for those who have no shared file yet. */
const shopBlock = `shop "[[Name of the shop]]"
  currency  [[USD]]
  workday   [[8]] h
  rate mechanical "Mechanical" [[100.00]] usual
  markup [[40]]%
  markup [[15]]% on sublets
  tax sales "[[Sales tax]]" [[7.00]]% on parts
`;

/** An estimate that can be weighed as it stands, so that each figure typed over is seen to move the totals. */
const estimateLines = `# Every name, title and figure below stands in for yours: type over each of them.

estimate "[[Number, and what is wrong]]"
  written  [[DAY WRITTEN]]
  start    [[DAY TO START]]
  valid    [[14]] d

vehicle "[[Year, make, model and engine]]"
  odometer  [[120000]] mi
  worth     [[6000.00]]

finding {{finding:low-cylinder}} "[[What was seen, heard or measured]]"
  seen by "[[how it was found]]"

access {{access:engine-lifted}} "[[Engine raised off its mounts]]"
  remove   [[1.0]] / [[1.2]] / [[1.6]] h
  refit    [[1.2]] / [[1.4]] / [[2.0]] h
  caution  lifting

access {{access:engine-out}} "[[Engine lowered or lifted out]]"
  includes {{access:engine-lifted}}
  remove   [[5.5]] / [[6.0]] / [[7.5]] h
  refit    [[6.0]] / [[6.5]] / [[8.5]] h
  caution  lifting, coolant, fuel, battery

labour {{labour:head-job}} "[[Head: take off, clean faces, refit]]"
  takes    [[13]] / [[14]] / [[18]] h  with {{access:engine-lifted}}
  takes    [[8]] / [[9]] / [[12]] h  with {{access:engine-out}}
  because  {{finding:low-cylinder}}
  apart after [[4]] h
  uses     {{part:head-set}}, {{part:head-bolts}}, {{sublet:head-check}}, {{part:engine-oil}}, {{part:oil-filter}}, {{part:coolant}}

labour {{labour:swap}} "[[Swap the engine]]"
  takes    [[4.5]] / [[5.5]] / [[8]] h  with {{access:engine-out}}
  because  {{finding:low-cylinder}}
  uses     {{part:swap-set}}, {{part:engine-oil}}, {{part:oil-filter}}, {{part:coolant}}

labour {{labour:accept}} "[[Used engine: compression and borescope before fitting]]" [[1.5]] h

part {{part:head-set}} "[[Head gasket set]]" [[95.00]] new  arrives [[2]] d
part {{part:head-bolts}} "[[Head bolts]]" [[8]] at [[5.50]] new
part {{part:swap-set}} "[[Seals and wear parts for the engine]]" [[120.00]] new  counts as wear-parts
part {{part:engine-oil}} "[[Engine oil]]" [[5]] L at [[9.00]] new
part {{part:oil-filter}} "[[Oil filter]]" [[12.00]] new
part {{part:coolant}} "[[Coolant]]" [[8]] L at [[5.00]] new

sublet {{sublet:head-check}} "[[Head: check for cracks and flatness, reface]]" [[140.00]]  back in [[2]] d

option {{option:rebuild}} "[[Rebuild the head]]"
  do        {{labour:head-job}}
  warranty  [[12]] mo

option {{option:used}} "[[Fit a used engine]]"
  do        {{labour:accept}}, {{labour:swap}}
  warranty  [[3]] mo
  part "[[Used engine]]" [[1350.00]] used  arrives [[3]] d
    core [[150.00]]  due [[30]] d

option {{option:sell}} "[[Sell it as it stands]]"
  worth     [[1500.00]]
`;

/** A whole new estimate, of a day (YYYY-MM-DD). It uses the nearest shop file, or else brings a small shop of its own. */
export function starterFor(uri: string, today: string, context: FeatureContext): string {
  const shop = nearbyFiles(uri, context.host).find((file) => isShopFile(file.uri, context));
  const first = `${kinds.format.word} ${formatVersion}\n`;
  const head = shop === undefined ? `${first}\n${shopBlock}` : `${first}${kinds.use.word} "${shop.path}"\n`;
  const lines = estimateLines.replace('DAY WRITTEN', today).replace('DAY TO START', mondayAfter(today));
  return fromTemplate(`${head}\n${withFreshNames(lines, shop?.uri, context)}`);
}

/** A vehicle seldom comes in on the day on which it is quoted. */
function mondayAfter(today: string): string {
  const day = dayOf(today);
  // The first day of all, 1970-01-01, was a Thursday.
  return isoOf(day + 7 - ((day + 3) % 7));
}

/** A file that has a shop line; of one that is not read yet, the name must tell. */
function isShopFile(uri: string, { host }: FeatureContext): boolean {
  const read = host.read(uri);
  if (typeof read !== 'string') return new RegExp(`^${kinds.shop.word}\\b`, 'm').test(read.text);
  return read === 'unknown' && /(^|\/)shop[^/]*\.yard$/.test(uri);
}

/** Names that the shop file has already get a number: one name stands for one thing. */
function withFreshNames(template: string, shop: string | undefined, context: FeatureContext): string {
  const scope = shop === undefined ? undefined : context.weighing(shop).resolved.scope;
  return template.replace(/\{\{([a-z]+):([a-z-]+)\}\}/g, (_, kind: NamedKind, name: string) => {
    // Parts and outside work are named in one place, so a name must differ from both.
    const rivals: readonly NamedKind[] = kind === 'part' || kind === 'sublet' ? ['part', 'sublet'] : [kind];
    let fresh = name;
    for (let i = 2; rivals.some((rival) => scope?.find(rival, fresh) !== undefined); i++) fresh = `${name}-${i}`;
    return `{{${fresh}}}`;
  });
}
