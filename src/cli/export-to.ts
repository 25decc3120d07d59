import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { InputError } from './files.js';
import type { Terminal } from './terminal.js';

/** Where a text goes: into a file, or to the terminal. */
export function send(text: string, output: string | undefined, terminal: Terminal): void {
  if (output === undefined) {
    terminal.out(text);
    return;
  }
  // A slip of the hand must not cost an estimate.
  if (/\.yard$/i.test(output)) throw new InputError(`${output} is the name of an estimate; nothing was written. Choose another name for --output.`);
  try {
    writeFileSync(path.resolve(terminal.cwd, output), text);
  } catch (error) {
    throw new InputError(`${output} could not be written: ${error instanceof Error ? error.message : String(error)}`);
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
