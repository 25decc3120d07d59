import type { Problem } from '../language/index.js';
import { exampleBook } from './book/example-book.js';
import { resolveWithin } from './paths.js';
import { createLanguageService } from './service.js';

const ROOT = '/w';

/** What is wrong with the example of a rule, without its marks. Examples may use `shared-1.yard` and the like. */
export function problemsOfExample(text: string): readonly Problem[] {
  const uri = `${ROOT}/this.yard`;
  const service = createLanguageService({
    read: (file) => (file === uri ? { text } : /\/shared-\d+\.yard$/.test(file) ? { text: 'steelyard 1\n' } : 'missing'),
    resolvePath: (from, path) => resolveWithin(ROOT, from, path),
    exists: () => false,
    book: exampleBook,
  });
  return service.weighing(uri).problems;
}
