import { isLeftAsItIs, lastDay, type Estimate, type Finding, type Header, type Option, type Rate } from '../../estimate/index.js';
import { zero, type Amount, type Decimal } from '../../vocabulary/index.js';
import { afterStages, type Decided, type Decision, type Line, type Money, type Plan, type Weighed } from '../../weigh/index.js';
import { addedByChances, type Added } from './added.js';
import { groupsOf, lineWriter, waitOf, type LineWriter } from './lines.js';
import { picturesOf, type PictureFiles } from './pictures.js';
import type { Quote, QuoteChance, QuoteDeposit, QuoteFinding, QuoteHead, QuoteOption, QuoteReady, QuoteTax, RuleType } from './types.js';

/** Why no quote is made: a quote with lines missing must not go out. */
export type NoQuote = { readonly kind: 'no-option'; readonly name: string | undefined } | { readonly kind: 'incomplete'; readonly name: string; readonly title: string };

export type Quoted = { readonly kind: 'quote'; readonly quote: Quote } | NoQuote;

/**
 * The written quote of one option. Refused where the option isn't there or rests on a line that can't be read or priced; so
 * it is where the estimate's own line can't be, which says when the work starts and how long the prices hold.
 */
export function quoteOf(decision: Decision, name: string | undefined, files: PictureFiles): Quoted {
  const decided = decision.options.find(({ weighed }) => weighed.option.name === name);
  if (decided === undefined) return { kind: 'no-option', name };
  const { option, complete } = decided.weighed;
  if (!complete || decision.comparison.estimate.header?.broken === true) return { kind: 'incomplete', name: option.name, title: option.title };
  return { kind: 'quote', quote: quoted(decision, decided, files) };
}

function quoted(decision: Decision, decided: Decided, files: PictureFiles): Quote {
  const { estimate, money } = decision.comparison;
  const { weighed } = decided;
  const { option, totals, returns } = weighed;
  const coins = (value: Decimal) => value.toFixed(money.currency.digits);
  const after = afterStages(decision.comparison).get(weighed);
  const write = lineWriter(weighed, estimate, estimate.findings, money.currency.digits);
  const groups = groupsOf(weighed, write, money.currency.digits);
  const { low, high } = totals.total;
  const deposits = depositsOf(weighed, coins);
  return {
    ...headOf(estimate, money, option.title, files),
    option: { name: option.name, title: option.title },
    repairs: !isLeftAsItIs(option),
    groups,
    taxes: taxesOf(weighed, estimate, coins),
    total: coins(totals.total.likely),
    range: low.eq(high) ? undefined : { low: coins(low), high: coins(high) },
    rates: ratesOf(weighed, money),
    authorisedBefore: after === undefined ? undefined : { amount: coins(after.authorised.likely), left: coins(after.left.likely) },
    deposits,
    comesBack: deposits.length === 0 ? undefined : coins(returns.refunds.likely.plus(returns.taxBack.likely)),
    kept: option.harvests.map(({ title, value }) => ({ title, worth: value === undefined ? undefined : coins(money.round(value.likely)) })),
    ready: readyOf(decided, estimate),
    warranty: option.warranty === undefined ? undefined : waitOf(option.warranty),
    leavesOut: option.leavesOut,
    notDone: notDoneOf(weighed, estimate, coins),
    couldBeFound: addedByChances(weighed, estimate, money).map((one) => chanceOf(one, write, coins)),
    weighed: decision.options.filter((one) => one.weighed.complete).map((one) => optionOf(one.weighed, one === decided, coins)),
    maybeCovered: decision.coverages.filter(({ answer, options }) => answer !== 'not covered' && (options.length === 0 || options.includes(option.name))).map(({ coverage }) => coverage.title),
    notes: [...option.notes, ...estimate.notes],
    cautions: weighed.cautions,
    ruleTypes: ruleTypesOf(weighed),
  };
}

/** The head of every paper for a customer. `otherwise` is its title where neither the estimate nor the vehicle has one. */
export function headOf({ shop, header, vehicle, findings }: Estimate, { currency }: Money, otherwise: string, files: PictureFiles): QuoteHead {
  return {
    locale: shop.locale,
    currency,
    shop: { name: shop.title, address: shop.address, phone: shop.phone },
    title: header?.title ?? vehicle?.title ?? otherwise,
    written: header?.written,
    validUntil: header === undefined ? undefined : validUntil(header),
    vehicle: vehicle === undefined ? undefined : { title: vehicle.title, vin: vehicle.vin, odometer: measured(vehicle.odometer) },
    findings: findingsOf(findings, files),
  };
}

function measured(amount: Amount | undefined): { readonly value: string; readonly unit: string } | undefined {
  return amount === undefined ? undefined : { value: amount.likely.toFixed(), unit: amount.unit?.word ?? '' };
}

function findingsOf(findings: readonly Finding[], files: PictureFiles): QuoteFinding[] {
  const pictures = picturesOf(findings, files);
  return findings.map(({ title, seenBy, compression, leakage, debris }, i) => ({
    title, seenBy, debris,
    compression: compression === undefined ? undefined : { values: compression.values.map((one) => one.toFixed()), unit: compression.unit?.word ?? '' },
    leakage: leakage?.values.map((one) => one.toFixed()),
    pictures: pictures[i] ?? [],
  }));
}

/** The last day of the offer. */
function validUntil({ written, valid }: Header): string | undefined {
  return written === undefined || valid === undefined ? undefined : lastDay(written, valid);
}

export function taxesOf({ totals }: Pick<Weighed, 'totals'>, { shop }: Estimate, coins: (value: Decimal) => string): QuoteTax[] {
  const untaxed = (line: Line) => (line.condition === undefined ? undefined : shop.coreTax.get(line.condition)?.policy) === 'none';
  const deposits = totals.lines.some((line) => line.kind === 'core' && !untaxed(line));
  return totals.taxes.filter(({ amount }) => !amount.likely.isZero()).map(({ tax, amount, onCores }) => ({
    title: tax.title,
    percent: tax.percent.likely.toFixed(),
    on: [...tax.on, ...(deposits && tax.on.has('parts') && !onCores.likely.isZero() ? ['deposits' as const] : [])],
    amount: coins(amount.likely),
  }));
}

interface RatesFrom {
  readonly option: Pick<Option, 'parts'>;
  readonly planned: { readonly chosen: Pick<Plan, 'paid' | 'jobs'> };
}

/** What an hour costs, for the classes of work that it has. */
export function ratesOf({ option, planned: { chosen } }: RatesFrom, { currency }: Money): Quote['rates'] {
  const timed = chosen.paid.filter(({ remove, refit }) => remove !== undefined || refit !== undefined);
  const cores = [...option.parts, ...chosen.paid.flatMap((way) => way.parts)].filter(({ core }) => core?.assemble !== undefined);
  const rates = [...timed.map(({ rate }) => rate), ...chosen.jobs.map(({ job }) => job.rate), ...cores.map(({ core }) => core?.rate)];
  const classes: readonly Rate[] = [...new Set(rates.filter((rate) => rate !== undefined))];
  return classes.map(({ title, price }) => ({ title, price: price.likely.toFixed(Math.max(currency.digits, price.likely.decimalPlaces())) }));
}

export function depositsOf({ returns }: Pick<Weighed, 'returns'>, coins: (value: Decimal) => string): QuoteDeposit[] {
  return returns.cores.map(({ part, core, charge, refund, taxBack, taxKept, deadline, late }) => ({
    title: part.title,
    charge: coins(charge.likely),
    refund: coins(refund.likely),
    taxBack: coins(taxBack.likely),
    taxKept: coins(taxKept.likely),
    until: deadline,
    late,
    less: [
      ...(core.less === undefined ? [] : [{ title: undefined, amount: coins(core.less.likely) }]),
      ...core.keeps.flatMap(({ title, less }) => (less === undefined ? [] : [{ title, amount: coins(less.likely) }])),
    ],
  }));
}

function readyOf({ weighed: { ready }, risk }: Decided, { header }: Estimate): QuoteReady | undefined {
  if (ready.bay.likely.isZero()) return undefined; // nothing is done to it
  const late = risk?.ready?.p90;
  return {
    days: ready.days.likely.toFixed(),
    start: header?.start ?? header?.written,
    date: ready.date,
    nineInTen: late === undefined || ready.date === undefined || late < ready.date ? undefined : late,
    // Nobody has to answer within no time.
    answer: header?.answer === undefined || header.answer.likely.isZero() ? undefined : waitOf(header.answer),
  };
}

function notDoneOf({ option, open }: Weighed, { consider }: Estimate, coins: (value: Decimal) => string): Quote['notDone'] {
  return consider.filter((job) => !option.labour.includes(job)).map((job) => {
    const priced = open.find((one) => one.job === job);
    return { title: job.title, now: priced === undefined ? undefined : coins(priced.now.likely), alone: priced === undefined ? undefined : coins(priced.alone.likely) };
  });
}

function chanceOf({ chance, after, lines, before, then }: Added, write: LineWriter, coins: (value: Decimal) => string): QuoteChance {
  const amount = then.total.likely.minus(before.total.likely);
  const own = lines.reduce((sum, line) => sum.plus(line.amount.likely), zero);
  return { title: chance.title, after: after.length === 0 ? undefined : after.map(({ title }) => title).join(' or '), lines: lines.map(write), feesAndTax: coins(amount.minus(own)), amount: coins(amount) };
}

function optionOf({ option, totals, returns, ready }: Weighed, isQuoted: boolean, coins: (value: Decimal) => string): QuoteOption {
  const isDone = !ready.bay.likely.isZero();
  return {
    title: option.title, isQuoted, ruledOutBy: option.ruledOutBy.map(({ title }) => title),
    total: coins(totals.total.likely),
    comesBack: returns.cores.length === 0 ? undefined : coins(returns.refunds.likely.plus(returns.taxBack.likely)),
    ready: isDone ? ready.date : undefined,
    days: isDone ? ready.days.likely.toFixed() : undefined,
    warranty: option.warranty === undefined ? undefined : waitOf(option.warranty),
  };
}

function ruleTypesOf({ totals: { lines, taxes }, cautions }: Weighed): RuleType[] {
  const has = (kind: Line['kind']) => lines.some((line) => line.kind === kind);
  const older = lines.some(({ condition }) => condition === 'used' || condition === 'rebuilt');
  const waste = cautions.some((topic) => topic === 'oil' || topic === 'coolant' || topic === 'solvents');
  return [
    'estimates',
    ...(taxes.length === 0 ? [] : ['tax' as const]),
    ...(has('core') ? ['deposits' as const] : []),
    ...(older ? ['conditions' as const] : []),
    ...(has('sublet') ? ['outside' as const] : []),
    'warranty',
    ...(waste ? ['waste' as const] : []),
    ...(cautions.includes('refrigerant') ? ['refrigerant' as const] : []),
  ];
}
