import { statSync } from 'node:fs';
import path from 'node:path';
import { estimateFilesBelow } from './estimate-files.js';
import { InputError } from './files.js';

/**
 * The estimate files that a word on the command line stands for: a file, those below a folder, or those whose path
 * matches a pattern that the shell left as it is. `*` stands for any letters, `?` for one, `**` for any folders between.
 */
export function* matchingFiles(word: string, cwd: string): Generator<string> {
  const whole = path.resolve(cwd, word);
  if (statSync(whole, { throwIfNoEntry: false }) !== undefined) {
    yield* estimateFilesBelow(whole);
    return;
  }
  if (!/[*?]/.test(word)) throw new InputError(`There is no folder or file ${word}.`);
  const steps = word.split('/');
  const first = steps.findIndex((step) => /[*?]/.test(step));
  const base = path.resolve(cwd, steps.slice(0, first).join('/') || (word.startsWith('/') ? '/' : '.'));
  const pattern = patternOf(steps.slice(first));
  let found = false;
  if (statSync(base, { throwIfNoEntry: false })?.isDirectory() === true) {
    for (const file of estimateFilesBelow(base)) {
      if (!pattern.test(path.relative(base, file).split(path.sep).join('/'))) continue;
      found = true;
      yield file;
    }
  }
  if (!found) throw new InputError(`No estimate file (.yard) matches ${word}.`);
}

function patternOf(steps: readonly string[]): RegExp {
  const plain = (text: string) => text.replace(/[\\^$.|+()[\]{}]/g, '\\$&').replace(/\*+/g, '[^/]*').replace(/\?/g, '[^/]');
  const written = steps.map((step, i) => (step === '**' ? (i === steps.length - 1 ? '.*' : '(?:[^/]+/)*') : `${plain(step)}${i === steps.length - 1 ? '' : '/'}`));
  return new RegExp(`^${written.join('')}$`, 'su');
}
