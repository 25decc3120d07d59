import path from 'node:path';
import { plain } from '../report/index.js';
import { InputError } from './files.js';
import { whyNotWritten } from './may-write.js';
import type { Terminal } from './terminal.js';
import { whyUnwritten, writeWhole } from './write-whole.js';

/** Where a text goes: into a file, or to the terminal. */
export function send(text: string, output: string | undefined, terminal: Terminal): void {
  if (output === undefined) {
    terminal.out(text);
    return;
  }
  const file = path.resolve(terminal.cwd, output);
  // A slip of the hand must not cost an estimate.
  const whyNot = whyNotWritten(file, terminal.cwd);
  if (whyNot !== undefined) throw new InputError(`${plain(output)} ${whyNot}; nothing was written. Choose another name for --output.`);
  try {
    if (output === '') throw new Error('it has no name');
    writeWhole(file, text);
  } catch (error) {
    throw new InputError(`${plain(output)} could not be written: ${whyUnwritten(error)}`);
  }
  terminal.err(`Wrote ${output}\n`);
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
