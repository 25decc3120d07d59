import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';

const part = (comment: string) => `steelyard 1\npart pump "Coolant pump" 64.30  «${comment}»\n`;

export const allowWithoutReason: Rule<{ readonly code: string }> = {
  code: 'allow-without-reason', family: 'shape', severity: 'warning', title: 'Something allowed without a reason',
  message: ({ code }) => ({ what: `${code} is allowed here, and nobody says why.`, why: 'Whoever reads the estimate next can’t tell whether it still holds.', instead: `Write the reason behind it: # allow ${code}: the reason` }),
  example: part('# allow condition-missing'),
};

export const allowUnknown: Rule<{ readonly code: string; readonly meant: string | undefined }> = {
  code: 'allow-unknown', family: 'shape', severity: 'warning', title: 'Something allowed that does not exist',
  message: ({ code, meant }) => ({ what: `No problem has the code ${clip(code)}.`, why: 'This comment allows nothing, and looks as if it did.', instead: meant === undefined ? 'Write the code that is shown with the problem, or leave the comment out.' : `Did you mean ${meant}?` }),
  fix: ({ code, meant }, at) => {
    const start = at.start + at.block.text.slice(at.start, at.end).indexOf(code);
    return meant === undefined ? undefined : { title: `Write ${meant}`, at: { block: at.block, start, end: start + code.length }, text: meant };
  },
  example: part('# allow conditon-missing: as agreed').replace(' 64.30', ' 64.30 new'),
};

export const allowUnused: Rule<{ readonly code: string }> = {
  code: 'allow-unused', family: 'shape', severity: 'warning', title: 'Something allowed that is not there',
  message: ({ code }) => ({ what: `There is no ${code} on this line.`, why: 'What was allowed has been mended, and the comment would hide it if it came back.', instead: 'Delete the comment.' }),
  fix: (_, at) => ({ title: 'Delete the comment', ...withoutComment(at) }),
  example: part('# allow condition-missing: as agreed').replace(' 64.30', ' 64.30 new'),
};

export const allowShape: Rule<{ readonly code: string }> = {
  code: 'allow-shape', family: 'shape', severity: 'warning', title: 'A line that can’t be read can’t be allowed',
  message: ({ code }) => ({ what: `${code} can't be allowed.`, why: 'It says that a line can’t be read: nobody knows what it costs, so allowing it would hide a hole in the total.', instead: 'Mend the line, then delete this comment.' }),
  example: part('# allow thousands-comma: as printed').replace(' 64.30', ' 1,064.30 new'),
};

/** The comment with the spaces before it, or its whole line where nothing else stands on it. */
function withoutComment(at: Parameters<NonNullable<Rule<never>['fix']>>[1]) {
  const { block } = at;
  const lineStart = block.text.lastIndexOf('\n', at.start - 1) + 1;
  const before = block.text.slice(lineStart, at.start);
  if (before.trim() !== '') return { at: { block, start: lineStart + before.trimEnd().length, end: at.end }, text: '' };
  const next = block.text.indexOf('\n', at.end);
  return { at: { block, start: lineStart, end: next < 0 ? block.text.length : next + 1 }, text: '' };
}
