import { problem, type Problem, type Span } from '../language/index.js';
import { childrenOf, currencyOf, kinds, unnamedCurrency, type RecordOf } from '../vocabulary/index.js';
import { buildOverrun } from './build-authorised.js';
import { buildFee } from './build-fee.js';
import { hoursIn } from './hours-in.js';
import * as rules from './money-rules.js';
import { ofShop } from './most.js';
import { nameTaken, onlyOnce } from './name-rules.js';
import { remember } from './remember.js';
import * as sense from './sense-rules.js';
import type { Condition, CoreTax, MarkupBand, Overrun, Rate, Shop, Tax, Tool } from './shop-types.js';
import { sourceOf } from './source.js';
import { wordsIn } from './words-in.js';

type ShopRecord = RecordOf<typeof kinds.shop>;

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

const HOURS_OF_A_DAY = 24;

/** In percent. From memory: no general tax on sales anywhere is half as high. */
const HIGHEST_TAX = 50;

const USUAL_WEEKEND = new Set([0, 6]);

const USUAL_LOCALE = 'en-US';

/** What is assumed where an estimate has no shop: no rates, no taxes, two decimals, closed at the weekend. */
export const noShop: Shop = {
  source: undefined, title: '', address: [], phone: undefined, locale: USUAL_LOCALE, currency: unnamedCurrency, rounding: 'half-up', workday: undefined, technicians: 1,
  closedWeekdays: USUAL_WEEKEND, closedDates: new Set(), rates: new Map(), usualRate: undefined,
  markup: { parts: [], sublets: [] }, taxes: [], coreTax: new Map(), fees: [], tools: [], overrun: undefined,
};

export function buildShop(record: ShopRecord, problems: Problem[]): Shop {
  return remember(record, [], problems, (own) => makeShop(record, own));
}

function makeShop(record: ShopRecord, problems: Problem[]): Shop {
  const { values } = record;
  const closed = values.closed ?? [];
  const markups = ofShop(record, kinds.markup, problems);
  const weekdays = closed.flatMap((day) => ('word' in day ? [WEEKDAYS.indexOf(day.word)] : []));
  const { workday } = values;
  if (workday !== undefined && (workday.high.isZero() || hoursIn({ ...workday, likely: workday.high }).gt(HOURS_OF_A_DAY))) problems.push(problem(sense.workdayImpossible, workday.at, undefined));
  reportNeverOpen(closed, problems);
  return {
    source: sourceOf(record),
    title: record.title?.text ?? '',
    address: (values.address ?? []).map((line) => line.text),
    phone: values.phone?.text,
    locale: localeFor(record, problems),
    currency: currencyFor(record, problems),
    rounding: values.rounding?.word ?? 'half-up',
    workday,
    technicians: Math.max(1, Math.floor(values.technicians?.likely.toNumber() ?? 1)),
    closedWeekdays: weekdays.length === 0 ? USUAL_WEEKEND : new Set(weekdays),
    closedDates: new Set(closed.flatMap((day) => ('iso' in day ? [day.iso] : []))),
    ...ratesOf(record, problems),
    markup: { parts: bandsOf(markups, 'parts', problems), sublets: bandsOf(markups, 'sublets', problems) },
    taxes: taxesOf(record, problems),
    coreTax: coreTaxOf(record, problems),
    fees: ofShop(record, kinds.fee, problems).flatMap((child) => buildFee(child, problems) ?? []),
    tools: childrenOf(record, kinds.tool).flatMap((child) => buildTool(child, true) ?? []),
    overrun: overrunOf(record, problems),
  };
}

/** The weekday with which a shop is closed on all seven. */
function reportNeverOpen(closed: NonNullable<ShopRecord['values']['closed']>, problems: Problem[]): void {
  const days = new Set<string>();
  for (const day of closed) {
    if (!('word' in day) || days.has(day.word)) continue;
    days.add(day.word);
    if (days.size === WEEKDAYS.length) problems.push(problem(sense.closedAllWeek, day.at, undefined));
  }
}

function localeFor(record: ShopRecord, problems: Problem[]): string {
  const written = record.values.locale;
  if (written === undefined) return USUAL_LOCALE;
  try {
    // A word of the right shape, such as german, is a tag that no platform knows.
    const [known] = Intl.NumberFormat.supportedLocalesOf(written.text);
    if (known !== undefined) return known;
  } catch {
    // Not even the shape of a tag.
  }
  problems.push(problem(rules.unknownLocale, written.at, { tag: written.text }));
  return USUAL_LOCALE;
}

function currencyFor(record: ShopRecord, problems: Problem[]): Shop['currency'] {
  const written = record.values.currency;
  if (written === undefined) return unnamedCurrency;
  const known = currencyOf(written.text);
  if (known === undefined) problems.push(problem(rules.unknownCurrency, written.at, { code: written.text }));
  return known ?? unnamedCurrency;
}

function ratesOf(record: ShopRecord, problems: Problem[]): Pick<Shop, 'rates' | 'usualRate'> {
  const rates = new Map<string, Rate>();
  let usualRate: Rate | undefined;
  for (const child of ofShop(record, kinds.rate, problems)) {
    const { price, usual } = child.values;
    if (child.name === undefined) continue;
    if (price === undefined) {
      if (!child.broken) problems.push(problem(rules.amountMissing, child.at, { what: 'its price for an hour', example: 'rate mechanical 132.00' }));
      continue;
    }
    const rate: Rate = { ...sourceOf(child), name: child.name.name, title: child.title?.text ?? child.name.name, price, cost: child.values.cost };
    if (!rates.has(rate.name)) rates.set(rate.name, rate);
    if (usual === undefined) continue;
    if (usualRate !== undefined) problems.push(problem(rules.usualTwice, usual.at, undefined, { at: usualRate.at, says: 'The first one' }));
    usualRate ??= rate;
  }
  if (rates.size === 1) usualRate ??= [...rates.values()][0];
  return { rates, usualRate };
}

function overrunOf(record: ShopRecord, problems: Problem[]): Overrun | undefined {
  const [first, ...others] = childrenOf(record, kinds.overrun);
  for (const other of others) problems.push(problem(onlyOnce, other.at, { kind: 'overrun' }, first === undefined ? undefined : { at: first.at, says: 'The first one' }));
  return first === undefined ? undefined : buildOverrun(first, problems);
}

function bandsOf(markups: readonly RecordOf<typeof kinds.markup>[], on: 'parts' | 'sublets', problems: Problem[]): MarkupBand[] {
  const bands = new Map<string, MarkupBand>();
  for (const child of markups) {
    const { percent, upTo } = child.values;
    if ((child.values.on?.word ?? 'parts') !== on) continue;
    if (percent === undefined) {
      if (!child.broken) problems.push(problem(rules.amountMissing, child.at, { what: 'its percentage', example: 'markup 50% to 250.00' }));
      continue;
    }
    const end = upTo?.likely.toFixed() ?? '';
    const twin = bands.get(end);
    if (twin !== undefined) problems.push(problem(rules.markupTwice, child.at, undefined, { at: twin.at, says: 'The first one' }));
    else bands.set(end, { ...sourceOf(child), percent, upTo });
  }
  return [...bands.values()].sort((a, b) => (a.upTo === undefined ? 1 : b.upTo === undefined ? -1 : a.upTo.likely.comparedTo(b.upTo.likely)));
}

function taxesOf(record: ShopRecord, problems: Problem[]): Tax[] {
  const seen = new Map<string, Span>();
  return ofShop(record, kinds.tax, problems).flatMap((child) => {
    const { percent, on, by } = child.values;
    if (child.name === undefined) return [];
    const first = seen.get(child.name.name);
    if (first !== undefined) {
      problems.push(problem(nameTaken, child.name.at, { kind: 'tax', name: child.name.name }, { at: first, says: 'The first one' }));
      return []; // charged once
    }
    seen.set(child.name.name, child.name.at);
    if (percent === undefined || on === undefined) {
      if (!child.broken) problems.push(problem(rules.taxUnclear, child.at, undefined));
      return [];
    }
    if (percent.high.gt(HIGHEST_TAX)) problems.push(problem(sense.taxTooHigh, percent.at, { written: percent.high.toFixed() }));
    return [{ ...sourceOf(child), name: child.name.name, title: child.title?.text ?? child.name.name, percent, on: new Set(wordsIn(on)), basis: by?.word ?? 'invoice' }];
  });
}

function coreTaxOf(record: ShopRecord, problems: Problem[]): Map<Condition, CoreTax> {
  const all: readonly Condition[] = ['new', 'aftermarket', 'rebuilt', 'used', 'customer-supplied'];
  const found = new Map<Condition, CoreTax>();
  for (const child of childrenOf(record, kinds.coreTax)) {
    const { policy, on } = child.values;
    if (policy === undefined) {
      if (!child.broken) problems.push(problem(rules.amountMissing, child.at, { what: 'kept, refunded or none', example: 'core-tax refunded on used, rebuilt' }));
      continue;
    }
    const conditions: readonly Condition[] = on === undefined ? all : wordsIn(on);
    const before = conditions.find((condition) => found.has(condition));
    if (before !== undefined) problems.push(problem(onlyOnce, child.at, { kind: 'core-tax', of: before }, { at: (found.get(before) as CoreTax).at, says: 'The first one' }));
    for (const condition of conditions) if (!found.has(condition)) found.set(condition, { ...sourceOf(child), policy: policy.word });
  }
  return found;
}

export function buildTool(record: RecordOf<typeof kinds.tool>, owned: boolean): Tool | undefined {
  const { name, values } = record;
  if (name === undefined) return undefined;
  return remember(record, [owned], [], () => ({ ...sourceOf(record), name: name.name, title: record.title?.text ?? name.name, owned, price: values.price, arrives: values.arrives }));
}
