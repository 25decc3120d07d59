import { expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Chances that say nothing, and inspections that can't find what they look for. Rules of our own.

const HEAD = 'steelyard 1\nshop "S"\n  currency EUR\n  workday 8 h\n  rate m 100.00\n  tax t 0% on parts\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding leak "Leaks"\n';
const TWO = 'option one "One"\n  warranty 12 mo\n  labour "Seal" 3 h\n    because leak\noption two "Two"\n  warranty 12 mo\n  labour "Other" 4 h\n    because leak\n';
const plugs = (percent: string) => `labour plugs "Spark plugs" 1 h\n  because leak\n  chance strip "A plug thread strips" ${percent}\n    labour "Insert" 2 h\n`;
const LOOK = 'inspect look "Look at the threads" 40.00\n  finds strip 90%\n';

function codes(text: string): readonly string[] {
  const { service } = serviceOver({ 'job.yard': HEAD + text });
  return service.diagnostics(uriOf('job.yard')).map(({ code }) => code);
}

test('an inspection that looks for what no option has is told; not where an option has it', () => {
  expect(codes(`${plugs('10%')}consider plugs\n${TWO}${LOOK}`)).toEqual(['finds-in-no-option']);
  expect(codes(`${plugs('10%')}${TWO}  do plugs\n${LOOK}`)).toEqual([]);
});

test('a chance of 100 % is told; one of 0 % or 99 % is not', () => {
  const told = (percent: string) => codes(`${plugs(percent)}${TWO}  do plugs\n`);
  expect(told('100%')).toEqual(['chance-in-every-case']);
  expect([told('0%'), told('99%')]).toEqual([[], []]);
});
