import { closest } from '../../vocabulary/index.js';
import { plain } from '../../report/index.js';
import { InputError } from '../files.js';
import type { Terminal } from '../terminal.js';
import { checkOff, checkOn, checkState } from './hook.js';
import { repositoryAt, type Repository } from './repository.js';
import { checkStaged } from './staged.js';
import { printWithTotals } from './text-with-totals.js';
import { totalsOff, totalsOn, totalsState } from './totals-switch.js';

/** What can be turned on and off in a repository. */
const SWITCHES: ReadonlyMap<string, ReadonlyMap<string, (repository: Repository) => string[]>> = new Map([
  ['totals', new Map([['on', totalsOn], ['off', totalsOff]])],
  ['check', new Map([['on', checkOn], ['off', checkOff]])],
]);

/** What git itself calls, and whoever likes. */
const CALLED = ['staged', 'text'];

/** `steelyard git`: what of Steelyard is set up in a repository, and turning it on and off. True where nothing is to be mended. */
export function gitCommand(words: readonly string[], version: string, terminal: Terminal): boolean {
  const [what, ...rest] = words;
  if (what === 'text' && rest.length === 1) {
    printWithTotals(rest[0] as string, terminal);
    return true;
  }
  if (what === 'staged' && rest.length === 0) return checkStaged(version, terminal);
  const say = (lines: readonly string[]) => terminal.out(lines.map((line) => `${line}\n`).join(''));
  if (what === undefined) {
    const repository = repositoryAt(terminal.cwd);
    say([totalsState(repository), checkState(repository)]);
    return true;
  }
  const turn = rest.length === 1 ? SWITCHES.get(what)?.get(rest[0] as string) : undefined;
  if (turn === undefined) throw new InputError(howToCall(what));
  say(turn(repositoryAt(terminal.cwd)));
  return true;
}

function howToCall(what: string): string {
  if (what === 'text') return 'git text takes one file.';
  if (what === 'staged') return 'git staged takes nothing: it checks what is staged.';
  if (SWITCHES.has(what)) return `git ${what} takes on or off.`;
  const meant = closest(what, [...SWITCHES.keys(), ...CALLED]);
  return `steelyard git takes totals on, totals off, check on or check off, or nothing to say what is on, and not ${plain(what)}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`;
}
