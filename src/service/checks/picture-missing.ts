import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const pictureMissing: Rule<{ readonly path: string }> = {
  code: 'picture-missing', family: 'names', severity: 'warning', title: 'A picture that is not there',
  message: ({ path }) => ({
    what: `There is no picture file “${clip(path)}”.`,
    why: 'The quote says so in its place, and the customer can’t see what was found.',
    instead: 'Write the path as seen from this file, or put the picture there.',
  }),
  example: example({ lines: 'finding leak "Front seal leaks"\n  picture «"missing.png"»\n', one: '  labour "Front seal" 2 h\n    because seen, leak\n' }),
};

/** Asked only where the host can tell at once. */
export const pictureCheck = wholeCheck(pictureMissing, function* find({ estimate: { findings }, exists }) {
  if (exists === undefined) return;
  for (const { pictures } of findings) {
    for (const { path, uri, at } of pictures) if (uri !== undefined && !exists(uri)) yield found(pictureMissing, at, { path });
  }
});
