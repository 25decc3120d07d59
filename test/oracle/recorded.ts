/** Random estimates with what happens to them later: room above what was authorised, quotes, authorisations and a closing. */
import fc from 'fast-check';
import { Draw } from '../support/random-draw.js';
import { randomEstimate } from '../support/random-estimate.js';
import { randomStaged } from '../support/random-stage.js';
import { list } from './prices.js';
import { readText, type Json } from './reader.js';
import { oracle, type Oracle } from './totals.js';

export const randomRecorded: fc.Arbitrary<string> = fc
  .tuple(fc.oneof(randomEstimate, randomStaged), fc.noBias(fc.array(fc.nat({ max: 65_535 }), { minLength: 60, maxLength: 120 })))
  .map(([text, numbers]) => withRecords(text, new Draw(numbers)));

export function withRecords(text: string, draw: Draw): string {
  const own = oracle(readText(text));
  const lines = [...authorisations(own, draw), ...(draw.chance(40) ? ['started on 2027-01-04'] : []), ...(draw.chance(70) ? closing(own, draw) : [])];
  const rule = draw.chance(75) ? `  overrun ${overrun(draw)}\n` : '';
  return `${text.replace(/^shop .*\n/m, (head) => `${head}${rule}`)}${lines.map((line) => `${line}\n`).join('')}`;
}

function overrun(draw: Draw): string {
  if (draw.chance(25)) return `${draw.between(0, 90)}`;
  const least = draw.between(1, 40);
  return [`${draw.between(0, 30)}.${draw.between(0, 9)}%`, ...(draw.chance(50) ? [`at least ${least}`] : []), ...(draw.chance(50) ? [`at most ${least + draw.between(0, 200)}`] : [])].join(' ');
}

/** About what it comes to, some less and some more, each day once. */
function authorisations({ prices: { digits }, options, stages }: Oracle, draw: Draw): string[] {
  const written = options.filter(({ record }) => record.kind === 'option' && record.name !== undefined && record.title !== undefined);
  const all = [...written.map(({ name, best }) => ({ name, total: best[0]?.total[1] ?? 0n })), ...stages.map(({ name, total }) => ({ name, total: total[1] }))];
  return all.flatMap(({ name, total }) => Array.from({ length: draw.chance(60) ? draw.between(1, 2) : 0 }, (_, i) => {
    const coins = (total * BigInt(draw.between(70, 120))) / 100n;
    const text = coins.toString().padStart(digits + 1, '0');
    const money = digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
    return `${i === 1 || draw.chance(70) ? 'authorised' : 'quoted'} ${money} for ${name} on 2027-01-${String(draw.between(1, 9) + 10 * i).padStart(2, '0')}`;
  }));
}

/** What one option really took: some of its named lines, each once, and now and then one that it does not have. */
function closing(own: Oracle, draw: Draw): string[] {
  const written = own.options.filter(({ record, best }) => record.kind === 'option' && record.title !== undefined && best.length > 0);
  if (written.length === 0) return [];
  const option = draw.pick(written);
  const named = (kinds: readonly string[]) => own.prices.all.filter(({ kind, name }) => name !== undefined && kinds.includes(kind)).map(({ name }) => name as string);
  const cores = own.prices.all.filter((part: Json) => part.kind === 'part' && part.name !== undefined && list(part['core']).length > 0).map(({ name }) => name as string);
  return [
    `closed for ${option.name} on 2027-02-${draw.between(10, 28)}`,
    ...(draw.chance(60) ? [`  billed ${draw.between(1, 9000)}`] : []),
    ...draw.some(named(['labour', 'access']), 60).map((name) => `  clocked ${name} ${draw.chance(40) ? `${draw.between(1, 500)} min` : `${draw.between(0, 9)}.${draw.between(0, 99)} h`}`),
    ...draw.some(named(['part', 'sublet', 'fee']), 60).map((name) => `  paid ${name} ${draw.between(1, 900)}`),
    ...draw.some(cores, 60).map((name) => `  credited ${name} ${draw.between(0, 50)}`),
  ];
}
