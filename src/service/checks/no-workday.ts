import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

export const noWorkday: Rule<undefined> = {
  code: 'no-workday', family: 'money', severity: 'advice', title: 'A shop without its working day',
  message: () => ({
    what: 'The shop does not say how many hours a working day has.',
    why: 'Ready dates are shown as if it had eight; hours are not days.',
    instead: 'Write it below shop, as in workday 7.5 h.',
  }),
  fix: (_, at) => ({ title: 'Add workday 8 h', ...factBelow(at, 'workday', '8 h') }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('  workday 8 h\n', '').replace('shop "S"', '«shop "S"»'),
};

export const workdayCheck = wholeCheck(noWorkday, function* find({ estimate: { shop, options }, header }) {
  if (shop.source === undefined || shop.workday !== undefined || (header.start ?? header.written) === undefined) return;
  if (options.some(({ labour }) => labour.length > 0)) yield found(noWorkday, shop.source.at, undefined);
});
