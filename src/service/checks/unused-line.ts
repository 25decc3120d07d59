import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factsOf } from './record-facts.js';

const how: Readonly<{ [kind: string]: string }> = { labour: 'do or consider', part: 'uses or fit', sublet: 'uses or send', access: 'with or way', fee: 'charge', tool: 'needs' };

const unusedLine: Rule<{ readonly kind: string; readonly name: string }> = {
  code: 'unused-line', family: 'names', severity: 'advice', title: 'A line that no other line names',
  message: ({ kind, name }) => ({
    what: `Nothing names the ${kind} line ${clip(name)}.`,
    why: 'It is in no total, so either it is left over or a line that should name it does not.',
    instead: `Name it behind ${how[kind] ?? 'another line'}, or delete it.`,
  }),
  example: example({ lines: 'part «seal» "Front seal" 12.00 new\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

/** Only in the estimate’s own file: a shared file holds what other estimates need. */
export const unusedCheck = wholeCheck(unusedLine, function* find({ resolved, isOwn }) {
  for (const record of factsOf(resolved).unnamed()) {
    if (record.name === undefined || how[record.kind.word] === undefined || !isOwn({ record })) continue;
    yield found(unusedLine, record.name.at, { kind: record.kind.word, name: record.name.name });
  }
});
