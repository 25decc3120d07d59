import { describe, expect, it } from 'vitest';
import { readSound } from './weighed.js';

interface Case {
  readonly policy: string;
  readonly condition: 'new' | 'rebuilt';
  readonly core?: string;
  readonly header?: string;
  readonly arrives?: string;
}

/** A part of 54.00 in all, 7.00 of it the core, at 7 %. */
function weighed({ policy, condition, core = '', header = '', arrives = '' }: Case) {
  return readSound(`steelyard 1\n${header}shop "Invented Bay"\n  currency USD\n  tax sales 7% on parts by invoice\n${policy}\noption one "One"\n  part "Unit" 47.00 ${condition}${arrives}\n    core 7.00${core}\n`).option('one');
}

function shown(one: Case): { readonly tax: string; readonly total: string; readonly after: string } {
  const { totals, net } = weighed(one);
  return { tax: totals.tax.likely.toFixed(2), total: totals.total.likely.toFixed(2), after: net.likely.toFixed(2) };
}

// Policies for a shop file, not legal advice: the shop's own rule governs.
describe('core charge and tax', () => {
  it('California, new part (read): 54.00 with a 7.00 core at 7 %: tax 3.78, 50.78 after the refund, tax on the core kept', () => {
    expect(shown({ policy: '  core-tax kept on new\n  core-tax refunded on rebuilt', condition: 'new' })).toEqual({ tax: '3.78', total: '57.78', after: '50.78' });
  });

  it('California, rebuilt part (read; sums computed): the tax on the core comes back too', () => {
    expect(shown({ policy: '  core-tax kept on new\n  core-tax refunded on rebuilt', condition: 'rebuilt' })).toEqual({ tax: '3.78', total: '57.78', after: '50.29' });
    expect(weighed({ policy: '  core-tax refunded', condition: 'rebuilt' }).returns.taxBack.likely.toFixed(2)).toBe('0.49');
  });

  it('Washington RCW 82.08.036 (read; sums computed): the deposit is not taxed', () => {
    expect(shown({ policy: '  core-tax none', condition: 'new' })).toEqual({ tax: '3.29', total: '57.29', after: '50.29' });
  });

  it('Virginia (read; sums computed): the charge is taxed', () => {
    expect(shown({ policy: '  core-tax kept', condition: 'rebuilt' })).toEqual({ tax: '3.78', total: '57.78', after: '50.78' });
  });

  it('without a policy, and for a condition that none names, the core is not taxed (own rule, computed)', () => {
    expect(shown({ policy: '', condition: 'new' }).tax).toBe('3.29');
    expect(shown({ policy: '  core-tax kept on used', condition: 'new' }).tax).toBe('3.29');
  });

  it('a tax that leaves parts out leaves cores out (own rule, computed)', () => {
    const { totals } = readSound('steelyard 1\nshop "S"\n  rate bench 100.00\n  tax work 7% on labour\n  core-tax kept\noption one "One"\n  labour "W" 1 h\n  part "Unit" 47.00 new\n    core 7.00\n').option('one');
    expect(totals.tax.likely.toFixed(2)).toBe('7.00');
  });
});

describe('what comes back for a core (computed)', () => {
  it('loses what is damaged and what is kept, and kept pieces are worth something', () => {
    const { returns } = weighed({ policy: '', condition: 'rebuilt', core: ' less 1.50\n      keeps "Housing" less 2.00 worth 3.25' });
    expect([returns.refunds.likely.toFixed(2), returns.salvage.likely.toFixed(2), returns.all.likely.toFixed(2)]).toEqual(['3.50', '3.25', '6.75']);
  });

  it('never falls below nothing', () => {
    const { returns } = weighed({ policy: '', condition: 'rebuilt', core: ' less 9.00' });
    expect(returns.refunds.likely.toFixed(2)).toBe('0.00');
  });

  it('tax comes back on what is refunded, not on what is lost', () => {
    const { returns } = weighed({ policy: '  core-tax refunded', condition: 'rebuilt', core: ' less 2.00' });
    expect(returns.taxBack.likely.toFixed(2)).toBe('0.35');
  });

  it('the old unit is charged for as many times as there are parts, and put together once', () => {
    const { totals } = readSound('steelyard 1\nshop "S"\n  rate bench 60.00\noption one "One"\n  part "Injectors" 4 at 100.00 rebuilt\n    core 25.00\n      assemble 30 min\n').option('one');
    expect([totals.cores.likely.toFixed(2), totals.labour.likely.toFixed(2), totals.total.likely.toFixed(2)]).toEqual(['100.00', '30.00', '530.00']);
  });

  it('is nothing after the last day: due by the calendar after the part arrives', () => {
    // Monday 2026-11-30 and three working days: Thursday 2026-12-03; two calendar days later the core is due.
    const header = 'estimate "E"\n  start 2026-11-30\n';
    const [core] = weighed({ policy: '', condition: 'rebuilt', header, arrives: ' arrives 3 d', core: ' due 2 d' }).returns.cores;
    expect([core?.deadline, core?.late]).toEqual(['2026-12-05', false]);
    const text = (due: string) => `steelyard 1\n${header}shop "S"\n  rate bench 10.00\noption one "One"\n  labour "W" 80 h\n  part "Unit" 47.00 rebuilt arrives 3 d\n    core 7.00 due ${due}\n`;
    // Ten days of work after the three of waiting end on 2026-12-16.
    const late = readSound(text('13 d')).option('one');
    expect([late.ready.date, late.returns.cores[0]?.deadline, late.returns.refunds.likely.toFixed(2)]).toEqual(['2026-12-16', '2026-12-16', '7.00']);
    const later = readSound(text('12 d')).option('one');
    expect([later.returns.cores[0]?.late, later.returns.refunds.likely.toFixed(2)]).toEqual([true, '0.00']);
  });

  it('a part that comes in weeks is there when the calendar says so, and the last day is never a day too late', () => {
    // One and a half weeks from Monday 2026-11-30 are ten and a half days: it is there on Friday the 11th, in the plan and
    // for the core. Ten and a half days more end within Monday the 21st, so that is the last day.
    const header = 'estimate "E"\n  start 2026-11-30\n';
    const { returns, ready } = readSound(`steelyard 1\n${header}shop "S"\n  rate bench 10.00\noption one "One"\n  labour "W" 8 h\n  part "Unit" 47.00 rebuilt arrives 1.5 wk\n    core 7.00 due 1.5 wk\n`).option('one');
    expect(ready.date).toBe('2026-12-11');
    expect(returns.cores[0]?.deadline).toBe('2026-12-21');
    // Half of the 30 days from 30 November are over on 15 December. A month later is 15 January, and 0.4 of its 31 days are 12.4.
    const [core] = weighed({ policy: '', condition: 'rebuilt', header, arrives: ' arrives 0.5 mo', core: ' due 1.4 mo' }).returns.cores;
    expect(core?.deadline).toBe('2027-01-27');
  });

  it('a core of a part that comes with a way in comes back as well', () => {
    const { totals, returns } = readSound('steelyard 1\nshop "S"\n  rate bench 10.00\naccess out "Out"\n  remove 1 h\n  part "Mount" 20.00 rebuilt\n    core 7.00\noption one "One"\n  labour "W" 1 h with out\n').option('one');
    expect([totals.cores.likely.toFixed(2), totals.access.likely.toFixed(2), returns.refunds.likely.toFixed(2)]).toEqual(['7.00', '30.00', '7.00']);
  });
});

// Common practice: one unit goes back once, whichever lines brought it in.
it('a unit that a job and a way in both bring is charged once and comes back once', () => {
  const { totals, returns } = readSound('steelyard 1\nshop "Invented Bay"\n  currency USD\n  rate bench 100.00 usual\npart unit "Unit" 47.00 new\n  core 30.00\naccess out "Out"\n  remove 1 h\n  refit 1 h\n  uses unit\nlabour job "Job"\n  takes 1 h with out\n  uses unit\noption one "One"\n  do job\n').option('one');
  expect([totals.cores.likely.toFixed(2), returns.refunds.likely.toFixed(2)]).toEqual(['30.00', '30.00']);
});
