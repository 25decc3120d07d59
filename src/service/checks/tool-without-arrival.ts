import { Places, type Rule } from '../../language/index.js';
import type { Labour } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { behind } from './lines.js';

/** Common practice: a missing special tool costs days, not hours. */
const toolWithoutArrival: Rule<{ readonly tool: string }> = {
  code: 'tool-without-arrival', family: 'job', severity: 'advice', title: 'A tool to bring in, and no day for it',
  message: ({ tool }) => ({
    what: `“${clip(tool)}” is not among the shop’s tools, and nothing says when it arrives.`,
    why: 'A missing special tool costs days; until then the bay is blocked, and the ready date is too early.',
    instead: 'Write arrives and the working days, or put the tool below shop if it is owned.',
  }),
  fix: (_, at) => ({ title: 'Write arrives 3 d', ...behind(at, 'arrives 3 d') }),
  example: example({ lines: '«tool lock "Camshaft locking set"»\nlabour seal "Front seal" 2 h\n  because seen\n  needs lock\n', one: '  do seal\n' }),
};

export const toolCheck = optionCheck(toolWithoutArrival, function* find({ option, weighed }) {
  const jobs = needing.itemsIn(option.labour, option.record);
  for (const { tools } of [...jobs, ...weighed.planned.chosen.paid]) {
    for (const tool of tools) if (!tool.owned && tool.arrives === undefined) yield found(toolWithoutArrival, tool.at, { tool: tool.title });
  }
});

const needing = new Places<Labour>(({ tools }) => tools.length > 0);
