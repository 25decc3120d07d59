import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mentionsOf } from '../../../src/service/navigate/names.js';
import type { LanguageService } from '../../../src/service/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { edited } from './cursor.js';

const FILE = 'e.yard';
const uri = uriOf(FILE);

/** Every amount and every problem, in the order of the options and of the lines. */
function meaning(service: LanguageService): unknown {
  const { comparison } = service.weighing(uri);
  return {
    problems: service.diagnostics(uri).map(({ code }) => code),
    options: comparison.options.map(({ complete, totals, inAll }) => [complete, inAll.likely.toFixed(), totals.total.high.toFixed(), ...totals.lines.map((line) => `${line.title} ${line.amount.likely.toFixed()}`)]),
  };
}

test('a rename changes no amount and no problem, and taken back gives the text', PATIENT, () => {
  let done = 0;
  fc.assert(fc.property(randomEstimate, fc.nat(), (text, pick) => {
    const { service, host } = serviceOver({ [FILE]: text });
    const tree = service.tree(uri);
    const mentions = (tree?.blocks ?? []).flatMap((block) => mentionsOf(block).filter(({ builtIn }) => !builtIn));
    const mention = mentions[pick % Math.max(1, mentions.length)];
    const place = mention === undefined ? undefined : service.place(mention.at);
    if (mention === undefined || place === undefined) return;
    const before = meaning(service);
    const edits = service.rename(uri, place.range.start, 'quite-another', []);
    expect(edits).not.toHaveProperty('refused');
    const after = edited({ [FILE]: text }, edits as Exclude<typeof edits, { readonly refused: string }>)[FILE] as string;
    expect(after).not.toBe(text);
    host.set(FILE, after);
    expect(meaning(service)).toEqual(before);
    const back = service.rename(uri, after.indexOf('quite-another'), mention.name, []);
    expect(edited({ [FILE]: after }, back as Exclude<typeof back, { readonly refused: string }>)[FILE]).toBe(text);
    done++;
  }), runs(11, 50));
  expect(done).toBeGreaterThan(30);
});

test('a rename to a name of the same estimate is refused, or changes no amount and no problem', PATIENT, () => {
  let refused = 0;
  fc.assert(fc.property(randomEstimate, fc.nat(), fc.nat(), (text, pick, other) => {
    const { service, host } = serviceOver({ [FILE]: text });
    const mentions = (service.tree(uri)?.blocks ?? []).flatMap((block) => mentionsOf(block).filter(({ builtIn }) => !builtIn));
    const mention = mentions[pick % Math.max(1, mentions.length)];
    const name = mentions[other % Math.max(1, mentions.length)]?.name;
    const place = mention === undefined ? undefined : service.place(mention.at);
    if (mention === undefined || name === undefined || place === undefined) return;
    const before = meaning(service);
    const edits = service.rename(uri, place.range.start, name, []);
    if ('refused' in edits) {
      refused++;
      return;
    }
    host.set(FILE, edited({ [FILE]: text }, edits)[FILE] as string);
    expect(meaning(service)).toEqual(before);
  }), runs(12, 120));
  expect(refused).toBeGreaterThan(5);
});
