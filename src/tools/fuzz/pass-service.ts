import { clean, finite, holds, same } from './claim.js';
import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { deskOver, uriOf, type Desk } from './over.js';
import type { LanguageService } from '../../service/index.js';
import { zero } from '../../vocabulary/index.js';

/** The service over an input, for the passes that ask it more. */
export function passService({ files, name }: Input, dice: Dice): Desk {
  const desk = deskOver(files);
  const input = [...files.values()].join('\n');
  problemsAreSound(desk.service, uriOf(name), input);
  figuresAreFigures(desk.service, uriOf(name), input, dice);
  return desk;
}

/** A service that saw the text before its last edit finds what a fresh one finds. */
export function passEdit({ files, name, before }: Input, { service }: Desk): void {
  const uri = uriOf(name);
  const desk = deskOver(new Map([...files, [name, before]]));
  desk.service.allDiagnostics(uri);
  desk.set(name, files.get(name) as string);
  same('a service that saw the text before finds what a fresh one finds', foundBy(desk.service, uri), foundBy(service, uri));
}

function problemsAreSound(service: LanguageService, uri: string, input: string): void {
  for (const [file, list] of service.allDiagnostics(uri)) {
    const length = service.tree(file)?.text.length ?? -1;
    for (const { range, text, code, fix, related, data } of list) {
      holds('a problem lies within its file', range.start >= 0 && range.start <= range.end && range.end <= length, () => `${code} ${range.start}–${range.end} of ${length}`);
      clean(`the words of a problem are words (${code})`, text, input);
      holds('no check of the trade stops, nor weighing', code !== 'check-failed' && code !== 'weighing-stopped', () => text);
      if (fix !== undefined) holds('a fix lies within its file', fix.place.range.end <= (service.tree(fix.place.uri)?.text.length ?? -1), () => code);
      if (related !== undefined) clean('the words of a related place are words', related.says, input);
      finite(`the facts of a problem are numbers (${code})`, data);
    }
  }
}

/** What a service says of a file, as one text: problems, totals and dates, without what is drawn. */
function foundBy(service: LanguageService, uri: string): string {
  const problems = [...service.allDiagnostics(uri)].map(([file, list]) => `${file}\n${list.map(({ code, range, text }) => `${code} ${range.start} ${range.end} ${text}`).join('\n')}`);
  const { comparison } = service.weighing(uri);
  const options = comparison.options.map(({ option, complete, totals, inAll, ready }) => [option.name, complete, ...[totals.total, inAll, ready.days].flatMap(({ low, likely, high }) => [low, likely, high].map(String)), totals.lines.length].join(' '));
  return [...problems, ...options].join('\n');
}

/** When an option is ready is planned only where it is asked, and is a third of the weighing: asked of some inputs. */
function figuresAreFigures(service: LanguageService, uri: string, input: string, dice: Dice): void {
  const asks = dice.chance(25);
  const { comparison } = service.weighing(uri);
  for (const weighed of comparison.options) {
    const { option, totals, inAll, net, returns } = weighed;
    for (const figure of [totals.total, totals.tax, totals.hours, inAll, net, returns.all, ...(asks ? [weighed.ready.days, weighed.ready.bay] : []), ...totals.lines.map(({ amount }) => amount)]) {
      holds('a figure is a number', [figure.low, figure.likely, figure.high].every((one) => one.isFinite()), () => `${option.name}: ${figure.label}`);
      clean('the name of a figure is words', figure.label, input);
    }
    holds('the taxes of an option add up to its tax', totals.taxes.reduce((sum, { amount }) => sum.plus(amount.likely), zero).eq(totals.tax.likely), () => `${option.name}: ${totals.tax.likely.toFixed()}`);
    holds('the lines of an option add up to its total', totals.lines.reduce((sum, { amount }) => sum.plus(amount.likely), totals.tax.likely).eq(totals.total.likely), () => `${option.name}: ${totals.total.likely.toFixed()}`);
  }
}
