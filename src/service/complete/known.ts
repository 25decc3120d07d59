import type { Access, Estimate, Labour, Part, Sublet } from '../../estimate/index.js';
import { figureText, hoursText, moneyText } from '../../report/index.js';
import { is, kinds, zero, type Amount, type Record } from '../../vocabulary/index.js';
// What a name would bring is priced with the calculations' own lines, so that an offer never says another sum than the total.
import { accessWork, keeper, labourLine, partLine, subletLine, type Money } from '../../weigh/index.js';
import type { Weighing } from '../types.js';

type Known = Access | Labour | Part | Sublet | Estimate['fees'][number] | Estimate['tools'][number] | Estimate['findings'][number];

const known = new WeakMap<Weighing, ReadonlyMap<Record, Known>>();

/** What a named line brings, in a few words: its money and hours. Undefined where it has none, or can't be read. */
export function brings(record: Record, weighing: Weighing): string | undefined {
  const { estimate } = weighing.resolved;
  const { money } = weighing.comparison;
  const rate = record.kind.word === 'rate' ? estimate.shop.rates.get(record.name?.name ?? '') : undefined;
  if (rate !== undefined) return `${amountText(rate.price, money)} an hour`;
  if (is(record, kinds.chance)) return record.values.percent === undefined ? undefined : `${record.values.percent.likely.toFixed()} %`;
  if (record.kind.word === 'option') {
    const weighed = weighing.comparison.options.find(({ option }) => option.record === record);
    return weighed === undefined ? undefined : moneyText(weighed.totals.total.likely, money);
  }
  const entity = entities(weighing).get(record);
  return entity === undefined ? undefined : keepText(entity, [estimate.shop, money], () => textOf(record.kind.word, entity, estimate, money));
}

const keepText = keeper<Known, string | undefined>();

function textOf(kind: string, entity: Known, { shop }: Estimate, money: Money): string | undefined {
  switch (kind) {
    case 'labour': {
      const job = entity as Labour;
      return joined(job.modes.map((mode) => {
        const line = labourLine(job, mode, money);
        const way = mode.with.length === 0 ? (job.modes.length > 1 ? ' in the car' : '') : ` with ${mode.with.map(({ name }) => name).join(', ')}`;
        return `${moneyText(line.amount.likely, money)} for ${hoursText(line.hours?.likely ?? zero)} h${way}`;
      }));
    }
    case 'access': {
      const lines = accessWork(entity as Access, money);
      const sum = lines.reduce((total, { amount }) => total.plus(amount.likely), zero);
      const hours = lines.reduce((total, line) => total.plus(line.hours?.likely ?? zero), zero);
      return lines.length === 0 ? undefined : `${moneyText(sum, money)} for ${hoursText(hours)} h, remove and refit`;
    }
    case 'part': return figureText(partLine(entity as Part, 'work', shop, money).amount, money);
    case 'sublet': return figureText(subletLine(entity as Sublet, 'work', shop, money).amount, money);
    case 'fee': {
      const { price, percent, of } = entity as Estimate['fees'][number];
      return price !== undefined ? amountText(price, money) : percent === undefined ? undefined : `${percent.likely.toFixed()} % of ${of.join(', ')}`;
    }
    case 'tool': {
      const { owned, price, arrives } = entity as Estimate['tools'][number];
      return owned ? 'owned' : joined([...(price === undefined ? [] : [amountText(price, money)]), ...(arrives === undefined ? [] : [`there in ${arrives.likely.toFixed()} ${arrives.unit?.word ?? 'd'}`])]);
    }
    default: return undefined;
  }
}

function entities(weighing: Weighing): ReadonlyMap<Record, Known> {
  let found = known.get(weighing);
  if (found === undefined) {
    const { access, labour, parts, sublets, fees, tools, findings, shop } = weighing.resolved.estimate;
    const all: readonly Known[] = [...access, ...labour, ...parts, ...sublets, ...fees, ...tools, ...findings, ...shop.fees, ...shop.tools];
    found = new Map(all.map((one) => [one.record, one]));
    known.set(weighing, found);
  }
  return found;
}

function joined(texts: readonly string[]): string | undefined {
  return texts.length === 0 ? undefined : texts.join('; ');
}

function amountText({ likely }: Amount, money: Money): string {
  return moneyText(likely, money);
}
