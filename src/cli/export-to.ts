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
    writeWhole(file, text);
  } catch (error) {
    throw new InputError(`${plain(output)} could not be written: ${whyUnwritten(error)}`);
  }
  terminal.err(`Wrote ${output}\n`);
}

/**
 * The form that is asked for: as said, or by the end of the file's name; undefined where neither says it. A name that
 * ends otherwise promises a form that nobody writes, so it is refused unless the form is said. A name that promises
 * another form than the one that is said is refused too: one of the two is a slip, and may cost the file of that name.
 */
export function formFor<F extends string>(as: string | undefined, output: string | undefined, forms: Readonly<Record<F, readonly string[]>>): F | undefined {
  const all = Object.keys(forms) as F[];
  const end = output === undefined ? '' : path.extname(output).slice(1).toLowerCase();
  if (as !== undefined) {
    const said = all.find((form) => form === as);
    if (said === undefined) throw new InputError(`--as takes ${all.join(', ')}, not ${as}.`);
    const fits = [...forms[said], ...(said === 'sarif' ? ['json'] : [])];
    if (PROMISES.has(end) && !fits.includes(end)) throw new InputError(`--as ${said} and the end of ${plain(output ?? '')} ask for two forms; nothing was written. Choose a name that ends in ${forms[said].map((one) => `.${one}`).join(' or ')}, or leave out --as.`);
    return said;
  }
  const found = all.find((form) => forms[form].includes(end));
  // An estimate's name is refused as such, whatever is said.
  if (found === undefined && end !== '' && end !== 'yard') throw new InputError(`The end of ${plain(output ?? '')} says no form that can be written here: ${all.flatMap((form) => forms[form]).map((one) => `.${one}`).join(', ')}. Choose one of these, or say the form with --as ${all.join(', ')}.`);
  return found;
}

/** Ends of names by which programs tell what a file holds. Whatever is written here may be called .txt, and a SARIF log is JSON. */
const PROMISES: ReadonlySet<string> = new Set(['html', 'htm', 'md', 'csv', 'json', 'sarif']);
