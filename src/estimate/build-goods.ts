import { problem } from '../language/index.js';
import { childrenOf, kinds, type Amount, type RecordOf } from '../vocabulary/index.js';
import type { Telling } from './lookup.js';
import * as moneyRules from './money-rules.js';
import { onlyOnce } from './name-rules.js';
import { rateFor } from './rate-for.js';
import { remember } from './remember.js';
import * as sense from './sense-rules.js';
import { sourceOf, titleOf } from './source.js';
import type { Core, Part, Sublet } from './work-types.js';

export function buildPart(record: RecordOf<typeof kinds.part>, lookup: Telling): Part | undefined {
  return remember(record, [lookup.shop], lookup.problems, (problems) => makePart(record, { shop: lookup.shop, problems }));
}

function makePart(record: RecordOf<typeof kinds.part>, lookup: Telling): Part | undefined {
  const { values, broken } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  const condition = values.condition?.word;
  if (!broken && condition !== 'customer-supplied') checkPrice(record, 'part', 'part pump "Coolant pump" 64.30 new', lookup);
  if (!broken && condition === undefined && (values.price ?? values.cost) !== undefined) lookup.problems.push(problem(moneyRules.conditionMissing, record.at, undefined));
  checkQuantity(values.quantity, lookup);
  const [core, ...otherCores] = childrenOf(record, kinds.core);
  for (const other of otherCores) lookup.problems.push(problem(onlyOnce, other.at, { kind: 'core' }, core === undefined ? undefined : { at: core.at, says: 'The first one' }));
  return {
    record, at: record.at, broken,
    name: record.name?.name,
    title,
    quantity: values.quantity,
    price: values.price,
    cost: values.cost,
    condition,
    arrives: values.arrives,
    warranty: values.warranty,
    core: core === undefined ? undefined : buildCore(core, values.quantity, lookup),
    held: undefined,
  };
}

function buildCore(record: RecordOf<typeof kinds.core>, quantity: Amount | undefined, lookup: Telling): Core {
  const { values, broken } = record;
  if (values.charge === undefined && !broken) lookup.problems.push(problem(moneyRules.amountMissing, record.at, { what: 'the core charge', example: 'core 150.00 due 30 d' }));
  const keeps = childrenOf(record, kinds.keeps).map((child) => ({ ...sourceOf(child), title: child.title?.text ?? '', less: child.values.less, worth: child.values.worth }));
  checkLoss(values.charge, quantity, [values.less, ...keeps.map(({ less }) => less)], lookup);
  return {
    ...sourceOf(record),
    charge: values.charge,
    due: values.due,
    less: values.less,
    assemble: values.assemble,
    rate: values.assemble === undefined ? undefined : rateFor(values.class, values.assemble.at, lookup),
    keeps,
  };
}

/** The charge is for one piece; what the refund loses is for all of them together. */
function checkLoss(charge: Amount | undefined, quantity: Amount | undefined, losses: readonly (Amount | undefined)[], { shop, problems }: Telling): void {
  if (charge === undefined) return;
  const whole = charge.likely.times(quantity?.likely ?? 1);
  let lost = whole.minus(whole);
  for (const less of losses) {
    if (less === undefined) continue;
    lost = lost.plus(less.likely);
    if (!lost.gt(whole)) continue;
    problems.push(problem(sense.coreLosesMore, less.at, { less: lost.toFixed(shop.currency.digits), charge: whole.toFixed(shop.currency.digits) }));
    return;
  }
}

export function buildSublet(record: RecordOf<typeof kinds.sublet>, lookup: Telling): Sublet | undefined {
  return remember(record, [lookup.shop], lookup.problems, (problems) => makeSublet(record, { shop: lookup.shop, problems }));
}

function makeSublet(record: RecordOf<typeof kinds.sublet>, lookup: Telling): Sublet | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  checkQuantity(values.quantity, lookup);
  for (const { name, at } of values.after ?? []) if (name === record.name?.name) lookup.problems.push(problem(sense.afterItself, at, { name }));
  if (!record.broken) checkPrice(record, 'outside work', 'sublet head-work "Valves, seats, faces" 12 at cost 31.00', lookup);
  return {
    ...sourceOf(record),
    name: record.name?.name, title, quantity: values.quantity, price: values.price, cost: values.cost,
    backIn: values.backIn, after: values.after ?? [], warranty: values.warranty,
  };
}

function checkQuantity(quantity: Amount | undefined, { problems }: Telling): void {
  if (quantity?.high.isZero() === true) problems.push(problem(sense.quantityOfNothing, quantity.at, undefined));
}

function checkPrice(record: RecordOf<typeof kinds.part> | RecordOf<typeof kinds.sublet>, kind: string, example: string, lookup: Telling): void {
  const { price, cost } = record.values;
  if (price === undefined && cost === undefined) lookup.problems.push(problem(moneyRules.priceMissing, record.at, { kind, example }));
  if (price !== undefined && cost !== undefined) lookup.problems.push(problem(moneyRules.priceAndCost, price.at, undefined));
  if (price === undefined && cost !== undefined) {
    const bands = kind === 'part' ? lookup.shop.markup.parts : lookup.shop.markup.sublets;
    const last = bands[bands.length - 1];
    if (last === undefined || (last.upTo !== undefined && last.upTo.likely.lt(cost.high))) {
      lookup.problems.push(problem(moneyRules.noMarkup, cost.at, { what: kind === 'part' ? 'parts' : 'outside work' }));
    }
  }
}
