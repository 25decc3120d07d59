import { clean, same } from './claim.js';
import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { deskOver, uriOf, type Desk } from './over.js';
import type { Span } from '../../language/index.js';
import type { Comparison, Figure } from '../../weigh/index.js';

/** A written figure tried with another value: the totals of a text that says so. */
export function passTrials({ files, name }: Input, { service }: Desk, dice: Dice): void {
  const uri = uriOf(name);
  const { comparison } = service.weighing(uri);
  const given = comparison.options.flatMap(({ totals }) => totals.lines.flatMap(({ amount }) => givenIn(amount)));
  if (given.length === 0) return;
  const trial = { at: dice.pick(given), value: dice.pick(['0', '1', '7.25', '999999999999.999999', '0.000001']) };
  const tried = service.trying(uri, [trial]);
  const edit = service.trialEdit(trial);
  if (edit === undefined) return;
  const file = edit.uri.slice(uriOf('').length);
  const text = files.get(file) ?? '';
  const { range, text: piece } = edit.edit;
  const other = deskOver(new Map([...files, [file, text.slice(0, range.start) + piece + text.slice(range.end)]]));
  same('a trial gives what writing it gives', totalsOf(tried), totalsOf(other.service.weighing(uri).comparison));
  clean('a trial is words', totalsOf(tried), [...files.values()].join('\n'));
}

function givenIn(figure: Figure): Span[] {
  const own = figure.step.kind === 'given' && figure.at !== undefined ? [figure.at] : [];
  return [...own, ...figure.from.flatMap(givenIn)];
}

function totalsOf({ options }: Comparison): string {
  return options.map(({ option, complete, totals: { total }, inAll }) => `${option.name} ${complete} ${total.low.toFixed()} ${total.likely.toFixed()} ${total.high.toFixed()} ${inAll.likely.toFixed()}`).join('\n');
}
