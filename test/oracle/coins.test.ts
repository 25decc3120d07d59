import { describe, expect, it } from 'vitest';
import { expectSame } from './compared.js';
import { texts, type ToldOption } from './told.js';

const of = (text: string) => expectSame(texts(text)).tool;
const one = (text: string) => of(text).options[0] as ToldOption;

describe('figures beside the quote end on the smallest coin too (computed by hand)', () => {
  const option = (price: string) => `option one "One"\n  labour "Work" 3 h\n  part "P" cost ${price} new\n  lasts 3 mo\n`;
  const shop = (currency: string, cost: string) => `steelyard 1\nshop "S"\n  currency ${currency}\n  rate bench 100 cost ${cost}\n  markup 0%\n`;

  it('three decimals: KWD', () => {
    const { downtime, monthly, shopOnly } = one(`${shop('KWD', '33.333')}vehicle "V"\n  downtime 1.255\n${option('0.001')}`);
    // One day at 1.255; 300.001 over three months; 3 × (100 - 33.333) = 200.001 by three hours, and on one day.
    expect([downtime?.likely, monthly?.perMonth.likely, shopOnly.perHour, shopOnly.perBayDay]).toEqual(['1.255', '100.000', '66.667', '200.001']);
  });

  it('none: JPY', () => {
    const { downtime, monthly, shopOnly } = one(`${shop('JPY', '50')}vehicle "V"\n  downtime 7.4\n${option('20')}`);
    // 7.4; 320 / 3 = 106.67; 150 / 3.
    expect([downtime?.likely, monthly?.perMonth.likely, shopOnly.perHour, shopOnly.perBayDay]).toEqual(['7', '107', '50', '150']);
  });

  it('two where nothing is said', () => {
    const { monthly } = one(`steelyard 1\nshop "S"\n${'option one "One"\n  part "P" 100.00 new\n  lasts 3 mo\n'}`);
    expect(monthly?.perMonth.likely).toBe('33.33');
  });
});

describe('thirds of an hour are rounded once, on the exact product (computed by hand)', () => {
  // 20 min at 195.015 an hour are 65.005 exactly: half a cent, which goes up. A third of an hour cut short would come to less.
  const shop = 'steelyard 1\nshop "S"\n  rate bench 195.0150 cost 195.0150\n';

  it('on a line, and as what it costs the shop', () => {
    const { figures, shopOnly } = one(`${shop}option one "One"\n  labour "Work" 20 min\n`);
    expect([figures['total']?.likely, shopOnly.by[0]?.cost.likely, shopOnly.total.likely]).toEqual(['65.01', '65.01', '0.00']);
  });

  it('several times over', () => {
    // 7 × 20 min = 140 min: 455.035.
    const { figures, shopOnly } = one(`${shop}option one "One"\n  labour "Work" 7 at 20 min\n`);
    expect([figures['total']?.likely, shopOnly.by[0]?.cost.likely]).toEqual(['455.04', '455.04']);
  });

  it('in the price of an inspection', () => {
    const { inspections } = of(`${shop}option one "One"\n  labour "Work" 1 h\n  chance c "C" 30%\n    part "P" 90.00 new\noption two "Two"\n  labour "Work" 2 h\ninspect look "Look" 20 min\n  finds c 90%\n`);
    expect(inspections.map(({ price }) => price.likely)).toEqual(['65.01']);
  });
});
