import { lstatSync, mkdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import path from 'node:path';
import { plain } from '../../report/index.js';
import { InputError } from '../files.js';
import { callOf } from './program.js';
import { topOf, type Repository } from './repository.js';
import { complaint, settingsOfGit } from './run-git.js';
import { whyUnwritten, writeWhole } from '../write-whole.js';

const HEAD = '#!/bin/sh\n# Steelyard checks the staged estimates before a commit. Put here by: steelyard git check on\n';
const CALL = ['git', 'staged'] as const;

function hookText(): string {
  const { there, call } = callOf(...CALL);
  return `${HEAD}if ${there}; then exec ${call}; fi\necho 'Steelyard has moved, so the staged estimates were not checked. Mend it with: steelyard git check on' >&2\n`;
}

/** Has git check the staged estimates before each commit. A hook that someone else wrote is never touched. */
export function checkOn(repository: Repository): string[] {
  const { file, shared } = hookOf(repository);
  const name = plain(file);
  const line = `${callOf(...CALL).call} || exit 1`;
  if (shared) throw new InputError(`The hooks of this repository are in a folder outside of it, which others may use too (core.hooksPath). Nothing was written. To check there, put this line into ${name}:\n  ${line}`);
  const before = read(file);
  if (before === hookText()) return [`Staged estimates are checked before each commit already; nothing was changed.`];
  if (before !== undefined && !isOurs(before)) throw new InputError(`There is a hook at ${name} already, and it was left as it is. To check estimates too, put this line into it:\n  ${line}`);
  try {
    mkdirSync(path.dirname(file), { recursive: true });
    writeWhole(file, hookText(), 0o755);
  } catch (error) {
    throw new InputError(`The hook ${name} could not be written: ${whyUnwritten(error)} Commits are not checked.`);
  }
  return [
    `Before each commit the estimates in it are checked from now on, as they are staged: errors stop the commit, warnings are shown.`,
    `The hook is ${name}. Take it away with: steelyard git check off`,
  ];
}

/** Takes the check away. A hook that someone else wrote, or changed, is left. */
export function checkOff(repository: Repository): string[] {
  const { file, shared } = hookOf(repository);
  const before = shared ? undefined : read(file);
  if (before === undefined || !before.includes(HEAD)) return ['Commits are not checked by Steelyard; nothing was changed.', ...(before?.includes(CALL.join(' ')) === true ? [`A hook of your own calls it: take the line with “${CALL.join(' ')}” out of ${plain(file)}.`] : [])];
  if (!isOurs(before)) throw new InputError(`The hook at ${plain(file)} was changed by hand, so it was left as it is. Take the lines of Steelyard out of it.`);
  rmSync(file);
  return [`Commits are not checked any more: ${plain(file)} was deleted.`];
}

/** Whether commits are checked, in a sentence. */
export function checkState(repository: Repository): string {
  const { file, shared } = hookOf(repository);
  const now = read(file);
  if (now !== undefined && !shared && isOurs(now)) return `Check of staged estimates before a commit: on${now === hookText() ? '.' : ', by another copy of Steelyard. Have this one do it with: steelyard git check on'}`;
  if (now?.includes(CALL.join(' ')) === true) return `Check of staged estimates before a commit: on, by the hook ${plain(file)}.`;
  return `Check of staged estimates before a commit: off.${now === undefined ? ' Turn it on with: steelyard git check on' : ` There is another hook at ${plain(file)}.`}`;
}

/** Where git looks for the hook, and whether that is outside the repository. */
function hookOf(repository: Repository): { readonly file: string; readonly shared: boolean } {
  const top = topOf(repository);
  const asked = (what: string) => {
    const { code, out, err } = settingsOfGit(['rev-parse', ...what.split(' ')], top);
    if (code !== 0) throw new InputError(`git did not say where its hooks are: ${complaint(err)}`);
    return path.resolve(top, out.toString('utf8').replace(/\r?\n$/, ''));
  };
  const file = asked('--git-path hooks/pre-commit');
  const own = [top, asked('--git-common-dir'), asked('--git-dir')].map(real);
  const folder = real(path.dirname(file));
  return { file, shared: !own.some((one) => folder === one || folder.startsWith(one + path.sep)) };
}

/** The folder with its links followed, as far up as it is there. */
function real(folder: string): string {
  if (lstatSync(folder, { throwIfNoEntry: false }) !== undefined) return realpathSync(folder);
  const up = path.dirname(folder);
  return up === folder ? folder : path.join(real(up), path.basename(folder));
}

/** What stands there; a link or a folder is someone else's. */
function read(file: string): string | undefined {
  const stats = lstatSync(file, { throwIfNoEntry: false });
  if (stats === undefined) return undefined;
  return stats.isFile() ? readFileSync(file, 'utf8') : '';
}

/** True for a hook that any copy of the program wrote and nobody changed. */
function isOurs(text: string): boolean {
  const lines = text.split('\n');
  const own = hookText().split('\n');
  return lines.length === own.length && lines.every((line, i) => (line.startsWith('if test -f ') && line.endsWith(` ${CALL.join(' ')}; fi`) ? i === own.length - 3 : line === own[i]));
}
