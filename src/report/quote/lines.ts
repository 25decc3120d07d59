import type { Estimate, Finding, Option, Part } from '../../estimate/index.js';
import type { Amount } from '../../vocabulary/index.js';
import { zero } from '../../vocabulary/index.js';
import type { Line, Plan, Weighed } from '../../weigh/index.js';
import type { GroupKind, QuoteGroup, QuoteLine, QuoteWait } from './types.js';

/** What a line says beyond its amount, looked up by what it was written as. */
export type LineWriter = (line: Line) => QuoteLine;

const belongs: readonly (readonly [GroupKind, (line: Line) => boolean])[] = [
  ['access', ({ share }) => share === 'access'],
  ['labour', ({ share, kind }) => share === 'work' && kind === 'labour'],
  ['parts', ({ share, kind }) => share === 'work' && kind === 'part'],
  ['outside', ({ share, kind }) => share === 'work' && kind === 'sublet'],
  ['fees', ({ share, kind }) => share === 'work' && kind === 'fee'],
  ['deposits', ({ kind }) => kind === 'core'],
];

/** The lines of an option in the groups in which a customer reads them. */
export function groupsOf({ totals }: Pick<Weighed, 'totals'>, write: LineWriter, digits: number): readonly QuoteGroup[] {
  return belongs.flatMap(([kind, isOf]): QuoteGroup[] => {
    const lines = totals.lines.filter((line) => isOf(line));
    if (lines.length === 0) return [];
    const timed = lines.filter(({ hours }) => hours !== undefined);
    return [{
      kind,
      lines: lines.map(write),
      hours: timed.length === 0 ? undefined : timed.reduce((sum, { hours }) => sum.plus(hours?.likely ?? zero), zero).toFixed(),
      amount: lines.reduce((sum, { amount }) => sum.plus(amount.likely), zero).toFixed(digits),
    }];
  });
}

/** What a writer looks lines up in: the goods and jobs of an option or a stage, and its ways in. */
interface Written {
  readonly option: Pick<Option, 'labour' | 'parts' | 'sublets'>;
  readonly planned: { readonly chosen: Pick<Plan, 'paid'> };
}

export function lineWriter({ option, planned: { chosen } }: Written, estimate: Estimate, findings: readonly Finding[], digits: number): LineWriter {
  const parts = [...option.parts, ...chosen.paid.flatMap((way) => way.parts)];
  const sublets = [...option.sublets, ...chosen.paid.flatMap((way) => way.sublets)];
  const jobs = [...option.labour, ...estimate.labour];
  return (line) => {
    const { kind, record } = line;
    const goods = kind === 'part' ? parts.find((one) => one.record === record) : kind === 'sublet' ? sublets.find((one) => one.record === record) : undefined;
    const job = kind === 'labour' ? jobs.find((one) => one.record === record) : undefined;
    return {
      kind,
      ...titleOf(line, estimate, parts),
      hours: line.hours?.likely.toFixed(),
      quantity: quantityOf(line, record.values['quantity'] as Amount | undefined),
      condition: kind === 'part' ? line.condition : undefined,
      warranty: goods?.warranty === undefined ? undefined : waitOf(goods.warranty),
      because: (job?.because ?? []).map((one) => findings.indexOf(one)).filter((at) => at >= 0),
      amount: line.amount.likely.toFixed(digits),
    };
  };
}

/** Lines that are made for a way in or a core carry its title, and what of it they are. */
function titleOf({ share, kind, title, at, record }: Line, { access }: Estimate, parts: readonly Part[]): Pick<QuoteLine, 'title' | 'stretch'> {
  const part = parts.find(({ core }) => core?.record === record);
  if (part !== undefined) return { title: part.title, stretch: kind === 'labour' ? 'core' : undefined };
  const way = share === 'access' && kind === 'labour' ? access.find((one) => one.remove?.at === at || one.refit?.at === at) : undefined;
  return way === undefined ? { title, stretch: undefined } : { title: way.title, stretch: way.remove?.at === at ? 'opening' : 'closing' };
}

function quantityOf({ quantity }: Line, written: Amount | undefined): QuoteLine['quantity'] {
  return quantity === undefined ? undefined : { value: quantity.likely.toFixed(), unit: written?.unit?.word };
}

/** A wait by the calendar; what is written without a unit of the calendar is none. */
export function waitOf({ likely, unit }: Amount): QuoteWait | undefined {
  const word = unit?.word;
  return word === 'd' || word === 'wk' || word === 'mo' ? { value: likely.toFixed(), unit: word } : undefined;
}
