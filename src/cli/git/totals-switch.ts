import { lstatSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { InputError } from '../files.js';
import { ATTRIBUTE, withAttribute, withoutAttribute } from './attributes.js';
import { callOf } from './program.js';
import { entriesOf, topOf, type Repository } from './repository.js';
import { complaint, readGit, settingsOfGit } from './run-git.js';
import { TOTALS_HEAD } from './totals-lines.js';
import { whyUnwritten, writeWhole } from '../write-whole.js';

const DRIVER = 'diff.steelyard';
const TEXT = `${DRIVER}.textconv`;
const HEADS = `${DRIVER}.xfuncname`;

/**
 * Settings that make git show totals. What is shown is never kept by git (cachetextconv): it would be kept by the
 * estimate's own contents, and totals change with the shop's file too. Where the program has gone, or can't read a
 * version, git shows it as it is.
 */
function settings(): ReadonlyMap<string, string> {
  const { there, call } = callOf('git', 'text', '--');
  return new Map([
    [TEXT, `show() { ${there} && ${call} "$1" || cat -- "$1"; }; show`],
    // What a hunk is headed by: the nearest line at the left edge, such as an option's, or the head of the totals.
    [HEADS, `^([a-z][a-z-]*[[:blank:]].*|${TOTALS_HEAD}.*)$`],
  ]);
}

/** Makes `git diff`, `git log -p` and `git show` end each estimate with its totals. Says what was done. */
export function totalsOn(repository: Repository): string[] {
  const top = topOf(repository);
  const file = attributesFile(top);
  // All is asked before the first thing is written, so that a git that fails leaves nothing half done.
  const given = isGiven(top);
  const said: string[] = [];
  for (const [name, value] of settings()) {
    const before = settingOf(name, top);
    if (before === value) continue;
    write(['config', '--local', '--replace-all', name, value], top);
    said.push(`The repository’s own settings: ${name} was ${before === undefined ? 'added' : 'brought up to date'}.`);
  }
  if (!given) {
    writeAttributes(file, withAttribute(readAttributes(file) ?? ''));
    said.push(`.gitattributes: the line “${ATTRIBUTE}” was added at its top. Commit it if others are to see totals too; each of them runs this command once.`);
    if (!isGiven(top)) said.push('But other lines in .gitattributes say otherwise about *.yard, so git shows no totals until they are taken out.');
  }
  return [
    `git diff, git log -p and git show end estimates with their totals${said.length === 0 ? ' already; nothing was changed' : ' from now on'}.`,
    ...said,
    'Leave them out once with --no-textconv, as for a patch that someone is to apply. Take all away with: steelyard git totals off',
  ];
}

/** Takes away what `totalsOn` did, and nothing else. Says what was done. */
export function totalsOff(repository: Repository): string[] {
  const top = topOf(repository);
  const file = attributesFile(top);
  const said: string[] = [];
  for (const name of settings().keys()) {
    if (settingOf(name, top) === undefined) continue;
    write(['config', '--local', '--unset-all', name], top);
    said.push(`The repository’s own settings: ${name} was taken out.`);
  }
  const text = readAttributes(file);
  const rest = withoutAttribute(text ?? '');
  if (text !== undefined && rest !== text) {
    if (rest === '') rmSync(file);
    else writeAttributes(file, rest);
    said.push(rest === '' ? '.gitattributes held nothing else and was deleted.' : `.gitattributes: the line “${ATTRIBUTE}” was taken out; the rest stays.`);
  }
  return [`git shows estimates as they are${said.length === 0 ? ' already; nothing was changed' : ' again'}.`, ...said];
}

/** Whether totals are shown, in a sentence. */
export function totalsState(repository: Repository): string {
  const top = topOf(repository);
  const now = settingOf(TEXT, top);
  const given = isGiven(top);
  if (now === undefined && !given) return 'Totals in git diff, git log -p and git show: off. Turn them on with: steelyard git totals on';
  if (now === undefined || !given) return `Totals in git diff, git log -p and git show: half set up, since ${given ? 'this copy of the repository has no setting for them' : '.gitattributes doesn’t give them estimates'}. Mend it with: steelyard git totals on`;
  if (now !== settings().get(TEXT)) return 'Totals in git diff, git log -p and git show: on, by another copy of Steelyard. Have this one do it with: steelyard git totals on';
  return 'Totals in git diff, git log -p and git show: on.';
}

/** True where git gives estimates to the driver, whoever wrote so. */
function isGiven(top: string): boolean {
  return entriesOf(readGit(['check-attr', '-z', 'diff', '--', 'estimate.yard'], top))[2] === 'steelyard';
}

function settingOf(name: string, top: string): string | undefined {
  const { code, out } = settingsOfGit(['config', '--local', '--null', '--get', name], top);
  return code === 0 ? entriesOf(out)[0] : undefined;
}

function write(args: readonly string[], top: string): void {
  const { code, err } = settingsOfGit(args, top);
  if (code !== 0) throw new InputError(`git could not change the repository’s settings: ${complaint(err)}`);
}

/** A link could lead anywhere, and git itself doesn't follow one here. */
function attributesFile(top: string): string {
  const file = path.join(top, '.gitattributes');
  const stats = lstatSync(file, { throwIfNoEntry: false });
  if (stats !== undefined && !stats.isFile()) throw new InputError('.gitattributes is a link or a folder, so it was left as it is, and git would not read it either.');
  return file;
}

function readAttributes(file: string): string | undefined {
  return lstatSync(file, { throwIfNoEntry: false }) === undefined ? undefined : readFileSync(file, 'latin1');
}

/** Byte by byte, as it was read; where it can't be written, what stood there is still there. */
function writeAttributes(file: string, text: string): void {
  try {
    writeWhole(file, Buffer.from(text, 'latin1'));
  } catch (error) {
    throw new InputError(`.gitattributes could not be written: ${whyUnwritten(error)}`);
  }
}
