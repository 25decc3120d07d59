import { closeSync, openSync, readlinkSync, readSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { plain } from '../report/index.js';
import { InputError } from './files.js';
import type { Terminal } from './terminal.js';

/** Where a text goes: into a file, or to the terminal. */
export function send(text: string, output: string | undefined, terminal: Terminal): void {
  if (output === undefined) {
    terminal.out(text);
    return;
  }
  const file = path.resolve(terminal.cwd, output);
  if (output !== '' && isEstimate(file)) throw new InputError(`${plain(output)} is an estimate, or the name of one; nothing was written. Choose another name for --output.`);
  try {
    if (output === '') throw new Error('it has no name');
    writeFileSync(file, text);
  } catch (error) {
    throw new InputError(`${plain(output)} could not be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  terminal.err(`Wrote ${output}\n`);
}

/** A name of an estimate, with what some systems leave away at its end; and so far into a file its first line is looked for. */
const NAME = /\.yard(?:[. ]*|:.*)$/is;
const FIRST_LINES = 4_096;
const MOST_LINKS = 40;

/** A slip of the hand must not cost an estimate, by whatever name it is reached. */
function isEstimate(file: string): boolean {
  if (NAME.test(path.basename(followed(file)))) return true;
  try {
    return /^\ufeff?(?:[ \t]*(?:#[^\r\n]*)?[\r\n]+)*steelyard[ \t]+\d/.test(startOf(file));
  } catch {
    return false;
  }
}

/** Where links lead, to a file that isn’t there yet too. */
function followed(file: string): string {
  let at = file;
  for (let links = 0; links < MOST_LINKS; links++) {
    if (NAME.test(path.basename(at))) return at;
    try {
      at = path.resolve(path.dirname(at), readlinkSync(at));
    } catch {
      return at;
    }
  }
  return at;
}

function startOf(file: string): string {
  const open = openSync(file, 'r');
  try {
    const bytes = Buffer.alloc(FIRST_LINES);
    return bytes.toString('utf8', 0, readSync(open, bytes, 0, FIRST_LINES, 0));
  } finally {
    closeSync(open);
  }
}

/** The form that is asked for: as said, or by the end of the file's name. */
export function formFor<F extends string>(as: string | undefined, output: string | undefined, forms: Readonly<Record<F, readonly string[]>>): F | undefined {
  const all = Object.keys(forms) as F[];
  if (as !== undefined) {
    const found = all.find((form) => form === as);
    if (found === undefined) throw new InputError(`--as takes ${all.join(', ')}, not ${as}.`);
    return found;
  }
  const end = output === undefined ? '' : path.extname(output).slice(1).toLowerCase();
  return all.find((form) => forms[form].includes(end));
}
