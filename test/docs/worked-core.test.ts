import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { namedFigures } from '../../src/report/index.js';
import { createLanguageService } from '../../src/service/index.js';
import { calculated, rounded } from './fractions.js';

// The third estimate of samples/worked-example.md: every sum of its tables is done again in fractions of whole numbers,
// and every figure that has a name is compared with the tool's. That a core goes back in time or not at all, and that
// its tax comes back with it, are common practice; both are written in the estimate.

const page = readFileSync(path.resolve(import.meta.dirname, '../../samples/worked-example.md'), 'utf8').split(/^# The core$/m)[1] ?? '';
const estimate = /^```yard\n([^]*?)^```$/m.exec(page)?.[1] ?? '';
const service = createLanguageService({ read: () => ({ text: estimate }), resolvePath: () => undefined });
const decision = service.decision('/core.yard');
const figures = namedFigures(decision.comparison, decision);
const exchange = decision.options[0];
const ready = exchange?.weighed.ready;
const core = exchange?.weighed.returns.cores[0];

/** What has no name of its own. */
const shown: Readonly<Record<string, string | undefined>> = {
  'hours to the end': ready?.finish.toFixed(1),
  'core refund': core?.refund.likely.toFixed(2),
  'core tax': core?.taxBack.likely.toFixed(2),
  downtime: exchange?.downtime?.likely.toFixed(2),
};

const rows = [...page.matchAll(/^\| (?!what)(.+?) \| (.+?) \| ([\d,.]+) \| ?(.*?) ?\|$/gm)]
  .map(([, what = '', how = '', amount = '', figure = '']) => ({ what, how, amount: amount.replaceAll(',', ''), figure }));

describe('the exchange engine worked by hand', () => {
  test('has its rows, and no error', () => {
    expect(rows.length).toBe(34);
    expect(service.diagnostics('/core.yard').filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test.each(rows)('$what: $how is $amount', ({ how, amount, figure }) => {
    expect(rounded(calculated(how), amount.split('.')[1]?.length ?? 0)).toBe(amount);
    if (figure !== '') expect(shown[figure] ?? figures.get(figure)?.likely.toFixed(2)).toBe(amount);
  });

  test('its days are those of the tool', () => {
    expect([ready?.days.likely.toFixed(), ready?.date, core?.deadline, core?.late]).toEqual(['6', '2026-12-07', '2026-12-25', false]);
    expect(page).toContain('6 working days from Monday, 2026-11-30, so it is ready on Monday, 2026-12-07.');
    expect(page).toContain('that, on 2026-12-25');
    expect(ready?.tasks.find(({ task }) => task.kind === 'part')?.to).toBe('2026-12-03');
  });
});
