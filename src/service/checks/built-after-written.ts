import type { Rule } from '../../language/index.js';
import { is, kinds } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const builtAfterWritten: Rule<{ readonly built: string; readonly written: string }> = {
  code: 'built-after-written', family: 'job', severity: 'warning', title: 'A vehicle that is not built yet',
  message: ({ built, written }) => ({
    what: `The vehicle was built in ${built}, and the estimate was written on ${written}.`,
    why: 'Recalls and warranties hold by the day a vehicle was built, so what they cover may be told wrong.',
    instead: 'Correct one of the two dates.',
  }),
  example: example({ header: '  written 2026-11-24\n  start 2026-11-30\n  valid 14 d\n', lines: 'vehicle "Van"\n  built «2027-03»\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

/** A month that is not over on the day of writing may be meant: as text it stands before its days. */
export const builtCheck = wholeCheck(builtAfterWritten, function* find({ header: { written }, estimate: { vehicle } }) {
  if (vehicle?.built === undefined || written === undefined || vehicle.built <= written) return;
  const at = is(vehicle.record, kinds.vehicle) ? vehicle.record.values.built?.at : undefined;
  yield found(builtAfterWritten, at ?? vehicle.at, { built: vehicle.built, written });
});
