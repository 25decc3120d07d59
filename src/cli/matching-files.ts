import path from 'node:path';
import { estimateFilesBelow, type TellUnread } from './estimate-files.js';
import { InputError } from './files.js';
import { statOf } from './read-whole.js';

/**
 * The estimate files that a word on the command line stands for: a file, those below a folder, or those whose path
 * matches a pattern that the shell left as it is. `*` stands for any letters, `?` for one, `**` for any folders between.
 */
export function* matchingFiles(word: string, cwd: string, tell: TellUnread): Generator<string> {
  const whole = path.resolve(cwd, word);
  if (statOf(whole) !== undefined) {
    yield* estimateFilesBelow(whole, tell);
    return;
  }
  if (!/[*?]/.test(word)) throw new InputError(`There is no folder or file ${word}.`);
  const steps = word.split('/');
  const first = steps.findIndex((step) => /[*?]/.test(step));
  const base = path.resolve(cwd, steps.slice(0, first).join('/') || (word.startsWith('/') ? '/' : '.'));
  const pattern = steps.slice(first);
  let found = false;
  if (statOf(base)?.isDirectory() === true) {
    for (const file of estimateFilesBelow(base, tell)) {
      if (!matches(pattern, path.relative(base, file).split(path.sep))) continue;
      found = true;
      yield file;
    }
  }
  if (!found) throw new InputError(`No estimate file (.yard) matches ${word}.`);
}

/** Whether folders and file match the steps of a pattern, of which `**` stands for any number. */
function matches(steps: readonly string[], names: readonly string[]): boolean {
  return isLike(steps, names, '**', (step, name) => isLike([...step], [...name], '*', (letter, own) => letter === '?' || letter === own));
}

/** Goes back to the last place that stands for anything, and no further: that is enough, and never takes long. */
function isLike(pattern: readonly string[], text: readonly string[], anything: string, fits: (one: string, own: string) => boolean): boolean {
  let at = 0;
  let last: { readonly at: number; readonly from: number } | undefined;
  for (let i = 0; i < text.length;) {
    const one = pattern[at];
    if (one === anything) last = { at: ++at, from: i };
    else if (one !== undefined && fits(one, text[i] as string)) {
      at++;
      i++;
    } else if (last === undefined) return false;
    else {
      last = { at: last.at, from: last.from + 1 };
      at = last.at;
      i = last.from;
    }
  }
  return pattern.slice(at).every((one) => one === anything);
}
