import { expect, test } from 'vitest';
import { chancesOf } from '../../src/weigh/chances.js';
import { read } from './weighed.js';

test('a chance without a percentage doesn’t count, nor what hangs on it, and those beside it do', () => {
  const text = 'steelyard 1\nshop "S"\n  rate bench 100.00\noption one "One"\n  labour "W" 1 h\n  chance "a"\n    part "P" 4.00 new\n    chance "b" 20%\n      part "Q" 4.00 new\n  chance "c" 10%\n    part "R" 4.00 new\n';
  const { comparison, option, errors } = read(text);
  const { counted, all } = chancesOf(option('one'), comparison.estimate, comparison.money);
  expect([counted.map(({ chance }) => chance.title), all, errors.map(({ code }) => code)]).toEqual([['c'], 1, ['percent-missing']]);
});
