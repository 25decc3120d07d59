import { describe, expect, test } from 'vitest';
import { quoteForm, quoteOf } from '../../src/report/quote/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// Common practice: a customer signs for work that is authorised; who declines it signs that, and pays for the look that was taken.

const HEAD = 'steelyard 1\nshop "S"\n  currency USD\n  workday 8 h\n  rate bench 100.00\nestimate "E-9"\n  written 2026-11-24\n  start 2026-11-30\n  valid 14 d\nvehicle "Van"\n  worth 3000.00\n  unrepaired 900.00\nlabour look "Compression and leakage" 1 h done first\n';
const OPTIONS = 'option mend "Mend it"\n  do look\n  labour "Front seal" 2 h\noption stop "Stop here"\n  do look\n  worth 900.00\n';

function textOf(name: string, lines = OPTIONS): string {
  const { service } = serviceOver({ 'this.yard': HEAD + lines });
  const made = quoteOf(service.decision(uriOf('this.yard')), name, new Map());
  if (made.kind !== 'quote') throw new Error(made.kind);
  return quoteForm(made.quote, 'text').replace(/\s+/g, ' ');
}

describe('a quote', () => {
  test('of a repair has room to authorise it', () => {
    const text = textOf('mend');
    for (const one of ['AUTHORISATION', 'To be filled in when the work is authorised: E-9. Mend it, quoted at $300.00.', 'Amount up to', 'Signature']) expect(text).toContain(one);
    expect(text).not.toContain('NO REPAIR');
  });

  test.each([['as-it-stands', 'Sell it as it stands'], ['stop', 'Stop here']])('of %s has room to decline, and says what is owed all the same', (name, title) => {
    const text = textOf(name);
    for (const one of ['NO REPAIR', `To be filled in when nothing is to be repaired: E-9. ${title}. Whoever signs has read this estimate, and authorises no repair; the vehicle is left as it stands.`, '$100.00 is owed all the same, for what is listed above.', 'Name', 'Signature', 'For the shop']) expect(text).toContain(one);
    for (const one of ['AUTHORISATION', 'Amount up to', 'work is authorised']) expect(text).not.toContain(one);
  });

  test('of stopping where nothing was done owes nothing', () => {
    const text = textOf('stop', OPTIONS.replaceAll('  do look\n', ''));
    expect(text).toContain('NO REPAIR');
    expect(text).not.toContain('owed all the same');
  });

  test('of stopping with work of its own has room to authorise that', () => {
    expect(textOf('stop', OPTIONS.replace('  worth 900.00\n', '  labour "Put together for the tow" 1 h\n  worth 900.00\n'))).toContain('Amount up to');
    expect(textOf('stop', OPTIONS.replace('  worth 900.00\n', '  part "Cover" 9.00 new\n  worth 900.00\n'))).toContain('Amount up to');
  });
});
