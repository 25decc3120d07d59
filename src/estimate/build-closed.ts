import { problem, type Problem } from '../language/index.js';
import { childrenOf, closest, kinds, valueRules, type Amount, type Name, type RecordOf } from '../vocabulary/index.js';
import { linesOfOption, named, type Lines } from './actual-lines.js';
import * as rules from './closed-rules.js';
import { hoursIn } from './hours-in.js';
import type { Actual, Closed } from './job-types.js';
import type { Lookup } from './lookup.js';
import { amountMissing } from './money-rules.js';
import { NAMED_KINDS } from './named-records.js';
import type { Option } from './option-types.js';
import { remember } from './remember.js';
import { sourceOf } from './source.js';
import type { Estimate } from './types.js';
import type { Part } from './work-types.js';

/** What the closing is held against. */
export interface ClosedAgainst {
  readonly options: readonly Option[];
  readonly access: Estimate['access'];
  readonly chances: Estimate['chances'];
  readonly written: string | undefined;
  readonly started: string | undefined;
}

/** Builds what a job really took; every line of it is looked up among those of the option that was done. */
export function buildClosed(record: RecordOf<typeof kinds.closed>, against: ClosedAgainst, lookup: Lookup): Closed {
  const { values } = record;
  const option = against.options.find(({ name }) => name === values.for?.name);
  const below = [...childrenOf(record, kinds.clocked), ...childrenOf(record, kinds.paid), ...childrenOf(record, kinds.credited)];
  const elsewhere = below.map((line) => byName(line.values.line, lookup));
  return remember(record, [option, against.chances, lookup.shop, against.written, against.started, ...against.access, ...elsewhere], lookup.problems, (problems) => {
    const lines = linesOfOption(option, against, lookup.shop);
    const read = new Reader(option, lookup, problems);
    if (option === undefined && values.for === undefined && below.length > 0) problems.push(problem(rules.closedForNothing, record.at, undefined));
    checkDay(record, against, problems);
    checkOne(values.billed, problems);
    const credited = read.all(childrenOf(record, kinds.credited), 'credited', lines.cores, (line) => line.values.amount);
    for (const one of credited) checkCredit(one, problems);
    return {
      ...sourceOf(record),
      option,
      on: values.on?.iso,
      billed: values.billed,
      clocked: read.all(childrenOf(record, kinds.clocked), 'clocked', lines.work, (line) => line.values.hours),
      paid: read.all(childrenOf(record, kinds.paid), 'paid', lines.goods, (line) => line.values.amount),
      credited,
      notes: childrenOf(record, kinds.note).flatMap((child) => child.title?.text ?? []),
    };
  });
}

/** What a name stands for, whichever option it belongs to. */
function byName(name: Name | undefined, lookup: Lookup): object | undefined {
  if (name === undefined) return undefined;
  return lookup.labour(name.name) ?? lookup.access(name.name) ?? lookup.part(name.name) ?? lookup.sublet(name.name) ?? lookup.fee(name.name);
}

/** Whether a name stands for a line of one of these kinds. */
function isOfItsKind({ name }: Name, wanted: readonly string[], { scope }: Lookup): boolean {
  return NAMED_KINDS.some((kind) => wanted.includes(kind) && scope.find(kind, name) !== undefined);
}

type ActualRecord = RecordOf<typeof kinds.clocked> | RecordOf<typeof kinds.paid> | RecordOf<typeof kinds.credited>;

class Reader {
  constructor(
    private readonly option: Option | undefined,
    private readonly lookup: Lookup,
    private readonly problems: Problem[],
  ) {}

  /** Reads the lines of one sort: each thing once, in the order in which they are written. */
  all<L extends object, R extends ActualRecord>(records: readonly R[], word: rules.ActualWord, lines: Lines<L>, amountIn: (record: R) => Amount | undefined): Actual<L>[] {
    const found: Actual<L>[] = [];
    for (const record of records) {
      const amount = amountIn(record);
      const name = record.values.line;
      const says = name?.name ?? record.title?.text;
      if (!this.isWhole(record, word, says, amount) || says === undefined || amount === undefined) continue;
      checkOne(amount, this.problems);
      const taken = new Set(found.map((one) => one.line));
      const line = name === undefined ? titled(lines, says, taken) : named(lines, name.name);
      const twin = found.find((one) => (line === undefined ? one.line === undefined && one.says === says : one.line === line));
      if (twin !== undefined) {
        this.problems.push(problem(rules.actualTwice, record.at, { word, says, together: together(twin.amount, amount) }, { at: twin.at, says: 'The first one' }));
        continue;
      }
      if (line === undefined) this.sayMissing(record, word, lines, says);
      found.push({ ...sourceOf(record), says, line, amount });
    }
    return found;
  }

  private isWhole(record: ActualRecord, word: rules.ActualWord, says: string | undefined, amount: Amount | undefined): boolean {
    if (record.broken) return says !== undefined && amount !== undefined;
    const { gives, example } = rules.actualWords[word];
    if (says === undefined) this.problems.push(problem(valueRules.expected, record.at, { wanted: 'the name of a line, or its title in quotes', example, found: undefined }));
    else if (amount === undefined) this.problems.push(problem(amountMissing, record.at, { what: gives, example }));
    return says !== undefined && amount !== undefined;
  }

  /** A name that nothing of the right kind has got its message already. */
  private sayMissing<L>(record: ActualRecord, word: rules.ActualWord, lines: Lines<L>, says: string): void {
    const name = record.values.line;
    if (this.option === undefined || (name !== undefined && !isOfItsKind(name, record.kind.fields.line.value.refersTo ?? [], this.lookup))) return;
    const at = name?.at ?? record.title?.at ?? record.at;
    const known = lines.flatMap((one) => (name === undefined ? [one.title] : (one.name ?? [])));
    this.problems.push(problem(rules.notInOption, at, { word, says, quoted: name === undefined, option: this.option.name, meant: closest(says, known) }));
  }
}

/** A line by its title; of several with one title the first that nothing stands for yet. */
function titled<L>(lines: Lines<L>, title: string, taken: ReadonlySet<L | undefined>): L | undefined {
  const all = lines.filter((one) => one.title === title);
  return (all.find((one) => !taken.has(one.line)) ?? all[0])?.line;
}

function together(a: Amount, b: Amount): string {
  if (a.unit === undefined) return a.likely.plus(b.likely).toFixed(2);
  if (a.unit === b.unit) return `${a.likely.plus(b.likely).toFixed()} ${a.unit.word}`;
  return `${hoursIn(a).plus(hoursIn(b)).toDecimalPlaces(2).toFixed()} h`;
}

function checkOne(amount: Amount | undefined, problems: Problem[]): void {
  if (amount === undefined || (amount.low.eq(amount.likely) && amount.high.eq(amount.likely))) return;
  const [, written = amount.likely.toFixed()] = /\/\s*([\d.]+)/.exec(amount.at.block.text.slice(amount.at.start, amount.at.end)) ?? [];
  problems.push(problem(rules.actualInThree, amount.at, { likely: amount.unit === undefined ? written : `${written} ${amount.unit.word}` }));
}

function checkDay(record: RecordOf<typeof kinds.closed>, { written, started }: ClosedAgainst, problems: Problem[]): void {
  const { on } = record.values;
  if (on === undefined) {
    if (!record.broken) problems.push(problem(rules.closedWhen, record.at, undefined));
  } else if (started !== undefined && on.iso < started) problems.push(problem(rules.closedBefore, on.at, { closed: on.iso, other: started, what: 'started' }));
  else if (written !== undefined && on.iso < written) problems.push(problem(rules.closedBefore, on.at, { closed: on.iso, other: written, what: 'written' }));
}

/** A part may stand several times in a row, and its core is then charged as often. */
function checkCredit({ line: part, amount }: Actual<Part>, problems: Problem[]): void {
  if (part === undefined) return;
  const charge = part.core?.charge;
  const whole = charge === undefined ? undefined : part.quantity === undefined ? charge.high : charge.high.times(part.quantity.high);
  if (whole === undefined || amount.likely.gt(whole)) problems.push(problem(rules.creditedOver, amount.at, { part: part.title, charge: whole?.toFixed(2) }));
}
