import type { Range, Statement, Tree } from '../../language/index.js';
import { is, kinds, readBlock, type Amount, type Name, type Record } from '../../vocabulary/index.js';
import type { Weighed } from '../../weigh/index.js';
import { moneyText } from '../../report/index.js';
import type { Symbol } from '../feature-types.js';
import { amountOf, lineText } from '../show/amounts.js';
import { madeLines } from '../show/made-lines.js';
import type { Weighing } from '../types.js';
import { endOf } from './lines.js';
import { meantBy, mentionsOf } from './names.js';

const KINDS: ReadonlySet<string> = new Set(['shop', 'vehicle', 'finding', 'access', 'labour', 'part', 'sublet', 'fee', 'tool', 'option'] satisfies Symbol['kind'][]);
/** Facts and remarks that would only lengthen the outline. */
const LEFT_OUT: ReadonlySet<string> = new Set(['takes', 'note', 'markup', 'core-tax', 'keeps', 'core', 'finds']);
/** The words by which an option brings in lines that stand elsewhere. */
const BRINGS: readonly string[] = ['do', 'fit', 'send', 'charge'];

/** The outline: lines in the order of the file, and below each option its jobs, parts, outside work and fees. */
export function symbolsOf(tree: Tree, weighing: Weighing): readonly Symbol[] {
  return tree.blocks.flatMap((block, i) => readBlock(block).records.flatMap((record) => (is(record, kinds.format) || record.kind.word === 'note' ? [] : [symbolOf(record, tree.starts[i] as number, weighing)])));
}

export function symbolKind(record: Record): Symbol['kind'] {
  const { word } = record.kind;
  return is(record, kinds.use) ? 'file' : KINDS.has(word) ? (word as Symbol['kind']) : 'other';
}

function symbolOf(record: Record, start: number, weighing: Weighing): Symbol {
  const { statement, name, title } = record;
  const own = name?.at ?? title?.at ?? record.at;
  const weighed = is(record, kinds.option) ? weighing.comparison.options.find(({ option }) => option.record === record) : undefined;
  const below = record.children.filter(({ kind }) => !LEFT_OUT.has(kind.word)).map((child) => symbolOf(child, start, weighing));
  const brought = weighed === undefined ? [] : broughtIn(weighed, start, weighing);
  return {
    name: wordsFor(record),
    detail: weighed === undefined ? detailOf(record, weighing) : moneyText(weighed.totals.total.likely, weighing.comparison.money),
    kind: symbolKind(record),
    range: rangeOf(statement, start),
    nameRange: { start: start + own.start, end: start + own.end },
    children: [...below, ...brought].sort((a, b) => a.range.start - b.range.start),
  };
}

/** Lines that stand elsewhere and that an option names, where it names them. */
function broughtIn(weighed: Weighed, start: number, weighing: Weighing): Symbol[] {
  const { record } = weighed.option;
  const values: { readonly [key: string]: unknown } = record.values;
  const names = new Set(BRINGS.flatMap((key) => (values[key] ?? []) as readonly Name[]).map(({ at }) => at));
  const { scope } = weighing.resolved;
  return mentionsOf(record.block).filter(({ at }) => names.has(at)).map((mention) => {
    const target = meantBy(mention, scope);
    const range: Range = { start: start + mention.at.start, end: start + mention.at.end };
    const lines = target === undefined ? [] : (madeLines(weighing).get(target.statement) ?? []).filter((made) => made.weighed === weighed && made.line.kind !== 'core');
    return {
      name: target === undefined ? mention.name : wordsFor(target),
      detail: lines.map(({ line }) => lineText(line, weighing.comparison.money)).join(', '),
      kind: target === undefined ? kindNamed(mention.kinds[0]) : symbolKind(target),
      range, nameRange: range, children: [],
    };
  });
}

function kindNamed(kind: string | undefined): Symbol['kind'] {
  return kind !== undefined && KINDS.has(kind) ? (kind as Symbol['kind']) : 'other';
}

/** Never empty: an editor refuses a line of its outline that has no words. */
function wordsFor({ title, name, kind }: Record): string {
  return title?.text.trim() || name?.name || kind.word;
}

function detailOf(record: Record, weighing: Weighing): string {
  const made = amountOf(record.statement, weighing);
  if (made !== undefined) return made;
  if (is(record, kinds.chance)) return record.values.percent === undefined ? '' : `${record.values.percent.likely.toFixed()} %`;
  if (is(record, kinds.coverage)) return record.values.sort?.word ?? '';
  const { money } = weighing.comparison;
  const figure = (record.values as { readonly worth?: Amount; readonly price?: Amount; readonly value?: Amount });
  const written = figure.worth ?? figure.price ?? figure.value;
  return written === undefined || is(record, kinds.part) || is(record, kinds.sublet) ? '' : moneyText(written.likely, money);
}

function rangeOf(statement: Statement, start: number): Range {
  return { start: start + (statement.tokens[0]?.start ?? 0), end: start + endOf(statement) };
}
