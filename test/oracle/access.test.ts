import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Draw } from '../support/random-draw.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { expectSame } from './compared.js';
import { texts } from './told.js';

/**
 * Seven ways in at small prices, so that plans lie close and often tie: ways that include others, share parts, tools and
 * outside work, and jobs that can be done with any of several sets of them; fees with caps and a tax on top.
 */
function manyWays(draw: Draw): string {
  const names = Array.from({ length: draw.between(5, 7) }, (_, i) => `way-${i}`);
  const some = (of: readonly string[], percent: number) => draw.some(of, percent);
  const said = (word: string, of: readonly string[]) => (of.length === 0 ? [] : [`  ${word} ${of.join(', ')}`]);
  const goods = ['piece', 'bag', 'lathe'];
  return `${[
    'steelyard 1', 'shop "Narrow Lane"', '  rate bench 10.00', `  fee supplies "Supplies" ${draw.between(1, 30)}% of labour, parts cap ${draw.between(1, 20)}`,
    ...(draw.chance(60) ? [`  tax levy ${draw.between(1, 20)}% on parts, fees${draw.chance(50) ? ', labour' : ''} by ${draw.pick(['item', 'invoice'])}`] : []),
    `part piece "Piece" ${draw.between(1, 30)} new`, `part bag "Bag" ${draw.between(1, 9)}.50 used`, '  core 4.00', `sublet lathe "Lathe" ${draw.between(1, 20)}`, `tool puller "Puller" ${draw.between(1, 15)}`,
    ...names.flatMap((name, i) => [
      `access ${name} "Way ${i}"`, ...said('includes', some(names.slice(0, i), 30)), `  remove ${draw.between(1, 12) * 5} min`, ...(draw.chance(50) ? [`  refit ${draw.between(1, 6)} h`] : []),
      ...said('uses', some(goods, 25)), ...(draw.chance(25) ? ['  needs puller'] : []),
    ]),
    ...Array.from({ length: draw.between(2, 5) }, (_, i) => {
      const sets = new Map(Array.from({ length: draw.between(2, 5) }, () => draw.atLeastOne(names, 22)).map((set) => [set.join(), set]));
      return [`labour job-${i} "Job ${i}"`, ...(draw.chance(65) ? [`  takes ${draw.between(2, 9)} h`] : []), ...[...sets.values()].map((set) => `  takes ${draw.between(1, 9)} h with ${set.join(', ')}`), ...said('uses', some(goods, 15)), ...(draw.chance(15) ? ['  needs puller'] : [])];
    }).flat(),
    'option all "All of it"', '  do job-0, job-1',
  ].join('\n')}\n`;
}

const texted = fc.noBias(fc.array(fc.nat({ max: 65_535 }), { minLength: 150, maxLength: 220 })).map((numbers) => manyWays(new Draw(numbers)));

it('among five to seven ways in the plan is the best of every set of them (100 random estimates)', PATIENT, () => {
  const seen = { none: 0, one: 0, more: 0 };
  fc.assert(fc.property(texted, (text) => {
    const { tool } = expectSame(texts(text));
    const count = tool.options[0]?.ways.chosen.ways.length ?? 0;
    seen[count === 0 ? 'none' : count === 1 ? 'one' : 'more']++;
  }), runs(12_777, 100));
  expect(Math.min(seen.none, seen.one, seen.more)).toBeGreaterThan(5);
});
