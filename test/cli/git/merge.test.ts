import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createLanguageService } from '../../../src/service/index.js';
import { inPassingFolder, job, Repository, shop } from './repository.js';

const { folder } = inPassingFolder();
let made = 0;

/** What two people make of one version, put together by git as it comes, with nothing set up for it but totals. */
function merged(base: string, mine: string, theirs: string): { readonly code: number | null; readonly text: string } {
  const repository = Repository.at(path.join(folder(), `${++made}`), { 'shop.yard': shop, 'job.yard': base, '.gitattributes': '*.yard diff=steelyard\n' });
  repository.commit('Base');
  repository.git('checkout', '--quiet', '-b', 'theirs');
  repository.write('job.yard', theirs);
  repository.commit('Theirs');
  repository.git('checkout', '--quiet', 'main');
  repository.write('job.yard', mine);
  repository.commit('Mine');
  const { code } = repository.tryGit('merge', '--quiet', '--no-edit', 'theirs');
  return { code, text: repository.read('job.yard') };
}

function totalsOf(text: string): Record<string, string> {
  const service = createLanguageService({ read: (uri) => ({ text: uri === '/job.yard' ? text : shop }), resolvePath: () => '/shop.yard' });
  const { comparison, problems } = service.weighing('/job.yard');
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return Object.fromEntries(comparison.options.map(({ option, totals: { total } }) => [option.name, total.likely.toFixed(2)]));
}

function edited(text: string, ...swaps: readonly (readonly [string, string])[]): string {
  return swaps.reduce((so, [from, to]) => {
    expect(so).toContain(from);
    return so.replace(from, to);
  }, text);
}

describe('two people’s changes in different options are merged without a conflict', () => {
  test.each<[string, readonly [string, string], readonly [string, string], Record<string, string>]>([
    ['prices', ['80.00', '90.00'], ['1000.00', '1100.00'], { mend: '290.00', radiator: '1600.00' }],
    ['a line added to each, at their ends', ['80.00 new\n', '80.00 new\n  part      "Belt"  20.00 new\n'], ['1000.00 new\n', '1000.00 new\n  part      "Oil"  40.00 new\n'], { mend: '300.00', radiator: '1540.00' }],
    ['the last line of one, the first of the next', ['80.00 new\n', '85.00 new\n'], ['option radiator "Fit a radiator too"', 'option radiator "Fit a good radiator too"'], { mend: '285.00', radiator: '1500.00' }],
    ['a line taken out, and a title', ['  warranty  12 mo\n', ''], ['"Radiator"', '"Radiator, new"'], { mend: '280.00', radiator: '1500.00' }],
    ['hours of the work, and a new option', ['  takes  2.0 h', '  takes  2.5 h'], ['1000.00 new\n', '1000.00 new\n\noption both "Both"\n  do  pump, swap\n'], { mend: '330.00', radiator: '1500.00', both: '750.00' }],
  ])('%s', (_, mine, theirs, totals) => {
    const { code, text } = merged(job, edited(job, mine), edited(job, theirs));
    expect(code).toBe(0);
    expect(text).toBe(edited(job, mine, theirs));
    expect(totalsOf(text)).toEqual(totals);
  });

  test('whatever lines they change, add or take out in their own option', () => {
    const option = (name: string, prices: readonly number[]) => `\noption ${name} "Way ${name}"\n  warranty  12 mo\n${prices.map((price, i) => `  part "Part ${i}"  ${price}.00 new\n`).join('')}`;
    const head = job.slice(0, job.indexOf('\noption mend'));
    const whole = (...parts: readonly (readonly number[])[]) => head + parts.map((prices, i) => option(`way-${i}`, prices)).join('');
    const prices = fc.array(fc.integer({ min: 1, max: 999 }), { maxLength: 6 });
    fc.assert(fc.property(prices, prices, prices, prices, prices, (first, second, middle, mine, theirs) => {
      // Who changes nothing commits nothing.
      fc.pre(first.join() !== mine.join() && second.join() !== theirs.join());
      const { code, text } = merged(whole(first, middle, second), whole(mine, middle, second), whole(first, middle, theirs));
      expect(code).toBe(0);
      expect(text).toBe(whole(mine, middle, theirs));
    }), { numRuns: 8 });
  });

  test('two prices for the same part are a conflict, which the estimate says in its own words', () => {
    const { code, text } = merged(job, edited(job, ['80.00', '90.00']), edited(job, ['80.00', '95.00']));
    expect(code).toBe(1);
    expect(text).toContain('<<<<<<<');
  });
});
