import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { changesHtml, changesJson, changesPart, changesText } from '../../src/report/changes/index.js';
import { changesBetween } from '../../src/service/changes.js';
import { Decimal } from '../../src/vocabulary/index.js';
import { textLikeness } from '../../src/weigh/changes/likeness.js';
import { split } from '../../src/weigh/changes/split.js';
import { MOST_TRIED, type Changes } from '../../src/weigh/changes/index.js';
import { estimateWith, HOSTILE } from '../support/hostile.js';
import { uriOf } from '../support/fixture.js';
import { changed, sideOf } from './both.js';

const SHOP = `steelyard 1
shop "Bay"
  currency USD
  rate bench "Bench" 120.00 usual
  rate fine "Fine work" 150.00
  markup 50% to 100.00
  markup 30%
  tax sales "Sales tax" 10% on parts
  fee supplies "Supplies" 5% of labour cap 30.00
`;
const JOB = `use "shop.yard"
estimate "E-1"
  start 2026-11-30
access open "Front off"
  remove 1.0 h
  refit 2.0 h
labour pump "Pump: renew"
  takes 8.0 h
  takes 2.0 h with open
  uses seal
labour test "Road test" 1.0 h done last
part seal "Seal" cost 40.00 new
option mend "Mend it"
  do pump, test
option leave "Only look"
  do test
`;
const files = (job = JOB, shop = SHOP) => ({ 'job.yard': `steelyard 1\n${job}`, 'shop.yard': shop });

/** Each row by its words, with what it moves in the total of `mend` and in that of `leave`. */
function rows({ changes, follows }: Changes): readonly string[] {
  const amounts = (effects: Changes['changes'][number]['effects']) => effects.map(({ total }) => total.toFixed(2)).join(' ');
  return [
    ...changes.map(({ sort, before, after, link, effects }) => `${sort} ${(after ?? before)?.title ?? ''}${link === undefined ? '' : ` by ${link.by.title}`}: ${amounts(effects)}`),
    ...follows.map(({ sort, title, effects }) => `${sort} ${title}: ${amounts(effects)}`),
  ];
}

/** Broken into lines anyhow. */
const asOne = (text: string) => text.replace(/\s+/g, ' ');

describe('worked by hand', () => {
  // 3 h of getting in, 2 h and 1 h of work at 120.00: supplies are at their cap of 30.00 in mend, and 6.00 in leave.
  test.each<[string, string, string, readonly string[]]>([
    ['hours alone', JOB.replace('2.0 h with open', '3.0 h with open'), SHOP, ['moved Pump: renew: 120.00 0.00']],
    // Hours at the mean of the rates, 1 × 125; the rate at the mean of the hours, 10 × (3 + 1 + 2.5); leave 10 × 1; supplies of leave 5 % of 10.
    ['hours and rate together', JOB.replace('2.0 h with open', '3.0 h with open'), SHOP.replace('120.00', '130.00'), ['moved Pump: renew: 125.00 0.00', 'moved Bench: 65.00 10.00', 'fee Supplies: 0.00 0.50']],
    // 40.00 at 50 % is 60.00, 44.00 at 60 % is 70.40: cost 4 × 1.55, markup 10 % of 42; tax 10 % of 10.40.
    ['cost and markup together', JOB.replace('40.00', '44.00'), SHOP.replace('50%', '60%'), ['moved Seal: 6.20 0.00', 'moved markup 60% to 100.00: 4.20 0.00', 'tax Sales tax: 1.04 0.00']],
    // 60.00 at 10 %, 75.00 at 12 %: the tax 2 % of 67.50, its base 11 % of 15.00.
    ['tax and what it stands on', JOB.replace('40.00', '50.00'), SHOP.replace('10% on', '12% on'), ['moved Seal: 15.00 0.00', 'moved Sales tax: 1.35 0.00', 'tax Sales tax: 1.65 0.00']],
    ['the cap of a fee', JOB, SHOP.replace('cap 30.00', 'cap 35.00'), ['moved Supplies: 5.00 0.00']],
    // In the car it is 8 h, with the way in 3 + 2.
    ['a way in that is not worth it any more', JOB.replace('refit 2.0 h', 'refit 6.0 h'), SHOP, ['moved Front off: 0.00 0.00', 'ways Way in: 360.00 0.00']],
    // The job, 240.00, and its seal; the way in isn't taken for anything else, which follows.
    ['work that an option does no more', JOB.replace('do pump, test', 'do test'), SHOP, ['went Pump: renew by Mend it: -300.00 0.00', 'ways Way in: -360.00 0.00', 'fee Supplies: -24.00 0.00', 'tax Sales tax: -6.00 0.00']],
    ['a part that a job brings in', `${JOB}part clamp "Clamp" 10.00 new\n`.replace('uses seal', 'uses seal, clamp'), SHOP, ['came Clamp: 10.00 0.00', 'tax Sales tax: 1.00 0.00']],
    ['a part that is in the file all along', `${JOB}part clamp "Clamp" 10.00 new\n`, SHOP, ['came Clamp: 0.00 0.00']],
    ['another class of work', JOB.replace('1.0 h done last', '1.0 h class fine done last'), SHOP, ['moved Road test: 30.00 30.00', 'fee Supplies: 0.00 1.50']],
    ['another usual rate', JOB, SHOP.replace(' usual', '').replace('150.00', '150.00 usual'), ['moved Bench: 90.00 15.00', 'moved Fine work: 90.00 15.00', 'fee Supplies: 0.00 1.50']],
    ['the same words in another order', JOB.replace('do pump, test', 'do test, pump # as we said'), SHOP, []],
  ])('%s', (_, job, shop, wanted) => {
    expect(rows(changed(files(), files(job, shop)))).toEqual(wanted);
  });

  test('each side is weighed with its own shop file', () => {
    const { options } = changed(files(), files(JOB, SHOP.replace('120.00', '130.00')));
    // 6 h at 120.00, a seal of 60.00, supplies 30.00, tax 6.00; then the same at 130.00.
    expect(options.map(({ before, after }) => [before?.total.toFixed(2), after?.total.toFixed(2)])).toEqual([['816.00', '876.00'], ['126.00', '136.50']]);
  });

  test('a part that stands below another option is one change', () => {
    const with1 = `${JOB.replace('  do pump, test\n', '  do pump, test\n  part "Bracket" 20.00 new\n')}`;
    const with2 = `${JOB}  part "Bracket" 20.00 new\n`;
    expect(rows(changed(files(with1), files(with2)))).toEqual(['elsewhere Bracket: -20.00 20.00', 'tax Sales tax: -2.00 2.00']);
  });

  test('a stage that opens more is why that is paid', () => {
    const staged = `${JOB}access out "Engine out"\n  remove 2.0 h\n  refit 3.0 h\nlabour look "Look at it" 1.0 h with open\nstage tear-down "Take it apart"\n  do look\n  opens open\n`;
    expect(rows(changed(files(staged), files(staged.replace('  opens open', '  opens open, out'))))).toEqual(['came Engine out by Take it apart: 600.00 600.00']);
  });

  test('a core that comes back too late follows from the days, not from the part', () => {
    const core = `${JOB}  part "Unit" 200.00 rebuilt\n    core 50.00 due 1 wk\n`;
    const { follows } = changed(files(core), files(core.replace('test "Road test" 1.0 h', 'test "Road test" 90.0 h')));
    expect(follows.filter(({ sort }) => sort === 'refund').map(({ effects }) => effects.map(({ total, inAll }) => `${total.toFixed(2)} ${inAll.toFixed(2)}`))).toEqual([['0.00 0.00', '0.00 50.00']]);
  });
});

describe('day and choice', () => {
  test('what a change does alone, and on top of the others', () => {
    const two = `${JOB}option used "Fit a used pump"\n  labour "Fit it" 3.0 h\n  part "Used pump" 350.00 used\n`;
    // mend 816.00 and used 360 + 350 + 18 + 35 = 763.00: each of two changes alone is too small, both together turn the choice.
    const before = files(two.replace('option leave "Only look"\n  do test\n', ''));
    const after = files(two.replace('option leave "Only look"\n  do test\n', '').replace('350.00', '380.00').replace('3.0 h\n', '3.25 h\n'));
    const found = changed(before, after);
    const turns = found.changes.map(({ alone, last }) => [alone, last].map((turned) => (typeof turned === 'string' ? turned : `${turned.pick.before ?? '-'} ${turned.pick.after ?? '-'}`)));
    expect(found.options.map(({ after: one }) => one?.name)).toEqual(['mend', 'used']);
    expect(turns).toEqual([['1 1', '1 0'], ['1 1', '1 0']]);
    expect(asOne(changesText(found))).toContain('makes mend the cheapest in place of used');
  });

  // Each the only change there is, so that alone and last must both be the whole of it, in either direction.
  test.each<[string, string, string]>([
    ['a fee of the shop', JOB, `${SHOP}  fee tow "Tow in" 40.00\n`],
    ['a tax', JOB, SHOP.replace(/ {2}tax.*\n/, '')],
    ['a markup band', JOB, `${SHOP}  markup 80% to 45.00\n`],
    ['a policy for cores', `${JOB}  part "Unit" 200.00 rebuilt\n    core 50.00\n`, `${SHOP}  core-tax kept\n`],
    ['a job with all that names it', JOB.replace('do pump, test', 'do pump').replace('option leave "Only look"\n  do test\n', 'option leave "Only look"\n').replace(/labour test.*\n/, ''), SHOP],
    ['a part that a job brings in', `${JOB}part clamp "Clamp" 10.00 new\n`.replace('uses seal', 'uses seal, clamp'), SHOP],
    ['a chance', JOB.replace('  uses seal\n', '  uses seal\n  chance "It breaks" 10%\n    part "Another" 9.00 new\n'), SHOP],
    ['a pin', JOB.replace('  do pump, test\n', '  do pump, test\n  way in-car\n'), SHOP],
    ['a core', JOB.replace('cost 40.00 new', 'cost 40.00 new\n  core 12.00 due 20 d\n    assemble 0.5 h'), SHOP],
    ['technicians', JOB, SHOP.replace('currency USD', 'currency USD\n  technicians 2')],
    ['the day to start', JOB.replace('2026-11-30', '2026-12-02'), SHOP],
    ['where a part stands', JOB.replace('part seal "Seal" cost 40.00 new\n', '').replace('  uses seal\n', '').replace('  refit 2.0 h\n', '  refit 2.0 h\n  part seal "Seal" cost 40.00 new\n'), SHOP],
  ])('%s', (what, job, shop) => {
    const before = what === 'a policy for cores' ? files(job) : files();
    for (const [one, other] of [[before, files(job, shop)], [files(job, shop), before]] as const) {
      const found = changed(one, other);
      expect(found.changes.map(({ sort }) => sort)).toHaveLength(1);
      const [change] = found.changes;
      if (what === 'a chance') {
        expect([change?.alone, change?.last]).toEqual(['none', 'none']);
        continue;
      }
      const whole = found.options.map((pair) => [pair.before?.inAll.toFixed(), pair.after?.inAll.toFixed(), pair.before?.ready, pair.after?.ready]);
      for (const turned of [change?.alone, change?.last]) {
        if (typeof turned !== 'object') throw new Error(`${what}: ${turned ?? 'no change'}`);
        expect(turned.options.map((turn) => [turn?.inAll.before.toFixed(), turn?.inAll.after.toFixed(), turn?.ready.before, turn?.ready.after])).toEqual(whole);
      }
    }
  });

  test('a text that can’t be weighed with only this change is told as unknown', () => {
    const before = files();
    const after = files(JOB.replace('access open "Front off"\n  remove 1.0 h\n  refit 2.0 h\n', '').replace('  takes 2.0 h with open\n', ''));
    const way = changed(before, after).changes.find(({ sort }) => sort === 'went');
    expect(way?.before?.title).toBe('Front off');
    expect(way?.alone).toBe('unknown');
    expect(typeof way?.last).toBe('object');
  });

  test('a job that needs a new part is tried without it, and the part without the job does nothing', () => {
    const after = files(`${JOB}labour hose "Hose: renew" 0.5 h\n  uses clip\npart clip "Clip" 3.00 new\n`.replace('do pump, test', 'do pump, test, hose'));
    const found = changed(files(), after);
    const inAll = found.changes.map(({ after: said, alone }) => [said?.title, typeof alone === 'string' ? alone : alone.options[0]?.inAll.after.minus(alone.options[0].inAll.before).toFixed(2)]);
    expect(inAll).toEqual([['Hose: renew', '60.00'], ['Clip', '0.00']]);
  });

  test('beyond the most that are tried it says so', () => {
    const parts = Array.from({ length: MOST_TRIED + 3 }, (_, i) => `  part "Bolt ${i}" ${i + 1}.00 new\n`).join('');
    const found = changed(files(), files(`${JOB}${parts}`));
    expect(found.changes.filter(({ alone }) => alone === 'beyond')).toHaveLength(3);
    expect(asOne(changesText(found))).toContain(`tried for the ${MOST_TRIED} largest; 3 more were not`);
  });

  test('nothing that is kept for a file is touched', () => {
    const [before, after] = [sideOf(files(), 'a'), sideOf(files(JOB.replace('2.0 h with', '3.0 h with')), 'b')];
    const kept = [before, after].map(({ service, uri }) => service.weighing(uri));
    changesBetween(before, after);
    expect([before, after].map(({ service, uri }) => service.weighing(uri))).toEqual(kept);
    expect(before.service.weighing(before.uri)).toBe(kept[0]);
  });
});

describe('sides that are not whole', () => {
  test('a missing file, a file without options, and one that can’t be read', () => {
    const good = sideOf(files(), 'good');
    const missing = changesBetween({ ...sideOf(files(), 'HEAD:job.yard'), uri: uriOf('nowhere.yard') }, good);
    expect(missing.before.trouble).toBe('missing');
    expect(changesText(missing)).toContain('HEAD:job.yard: there is no such file');
    expect(changed('steelyard 1\n', files()).before.trouble).toBe('no-option');
    expect(changed('steelyard 99\noption a "A"\n', files()).before.trouble).toBe('unreadable');
    expect(changesText(changed(files(), 'steelyard 1\n'))).toContain('it has no option yet');
  });

  test('what rests on lines that can’t be read says so; the rest stands', () => {
    const found = changed(files(), files(JOB.replace('takes 2.0 h with open', 'takes 2.0 hh with open').replace('1.0 h done', '1.5 h done')));
    expect(found.options.map(({ after }) => after?.complete)).toEqual([false, true]);
    expect(changesText(found)).toContain('Incomplete in after');
    expect(rows(found).find((row) => row.startsWith('moved Road test'))).toBe('moved Road test: 60.00 60.00');
  });

  test('other money is not compared', () => {
    const found = changed(files(), files(JOB, SHOP.replace('USD', 'EUR')));
    expect(found.comparable).toBe(false);
    expect(found.changes.every(({ effects }) => effects.every(({ total }) => total.isZero()))).toBe(true);
    expect(changesText(found)).toContain('different money');
  });

  test('nothing', () => {
    expect(changesText(changed(files(), files()))).toBe('E-1\nbefore → after\n\nNothing changed. The order of lines, spacing and comments don’t count.\n');
  });
});

describe('as data and as a page', () => {
  const pairs: readonly (readonly [string, Changes])[] = [
    ['all sorts', changed(files(), files(JOB.replace('2.0 h with open', '3.0 h with open').replace('option leave', 'option look'), SHOP.replace('120.00', '130.00')))],
    ['an option came', changed(files(), files(`${JOB}option new-one "Another"\n  do test\n`))],
    ['missing', changesBetween({ ...sideOf(files(), 'x'), uri: uriOf('nowhere.yard') }, sideOf(files(), 'y'))],
    ['nothing', changed(files(), files())],
    ['other money', changed(files(), files(JOB, SHOP.replace('USD', 'JPY')))],
  ];
  const valid = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(path.join(import.meta.dirname, '../../schemas/changes.schema.json'), 'utf8')) as object);
  const nowhere = { before: () => undefined, after: () => ({ file: 'job.yard', line: 1, column: 1 }) };

  test.each(pairs)('%s keeps to the schema', (_, found) => {
    expect(valid(JSON.parse(JSON.stringify(changesJson(found, nowhere)))), JSON.stringify(valid.errors)).toBe(true);
  });

  test('text and data show the same amounts', () => {
    const found = (pairs[0] as (typeof pairs)[number])[1];
    const { changes, follows } = changesJson(found, nowhere);
    const text = changesText(found).replaceAll(',', '');
    for (const { effects } of [...changes, ...follows]) for (const { total } of effects) if (!/^-?0\.?0*$/.test(total)) expect(text).toContain(total.startsWith('-') ? total : `+${total}`);
  });

  const tags = (page: string) => page.replace(/<style>[^]*?<\/style>/, '').match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));
  const edit = (text: string) => `${text}  part "${'Another'}" 5.00 new\n`.replace(' 2 h with open', ' 3 h with open').replace('100.00 usual', '110.00 usual');
  const shapeOf = (textAt: (place: number) => string) => changed(estimateWith(textAt), edit(estimateWith(textAt)));
  const plain = tags(changesHtml(shapeOf(() => 'plain words')));

  // Another text in each place, and each text in several places.
  test.each([0, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70, 77])('hostile texts stay text, from the %dth on', (first) => {
    const found = shapeOf((place) => HOSTILE[(first + place) % HOSTILE.length] as string);
    expect(tags(changesHtml(found))).toEqual(plain);
    // In a panel each change is a button to its line besides.
    expect(changesText(found).length).toBeGreaterThan(200);
    expect(changesHtml(found)).toContain(changesPart(found).replace(/<\/?button[^>]*>/g, ''));
    expect(changesText(found)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e\u2067]/);
  });
});

describe('what is the same line', () => {
  const sorts = (job: string) => changed(files(), files(job)).changes.map(({ sort, before, after }) => `${sort} ${before?.title ?? ''} > ${after?.title ?? ''}`);

  test.each([
    ['another name', JOB.replaceAll('seal', 'ring'), ['renamed Seal > Seal']],
    ['another title', JOB.replace('"Seal"', '"Seal ring, front"'), ['renamed Seal > Seal ring, front']],
    ['both, alike', JOB.replaceAll('seal', 'shaft-seal').replace('"Seal"', '"Seals"'), ['renamed Seal > Seals']],
    ['both, with the same words otherwise', JOB.replaceAll('seal', 'packing').replace('"Seal"', '"Packing"'), ['renamed Seal > Packing']],
    ['both and another price', JOB.replaceAll('seal', 'packing').replace('"Seal" cost 40.00', '"Packing" cost 55.00'), ['went Seal > ', 'came  > Packing']],
    ['another name and another price', JOB.replaceAll('seal', 'ring').replace('40.00', '55.00'), ['moved Seal > Seal']],
    ['another name of an option', JOB.replace('option leave', 'option look'), ['renamed Only look > Only look']],
  ])('%s', (_, job, wanted) => {
    expect([...sorts(job)].sort()).toEqual([...wanted].sort());
  });
});

describe('measures', () => {
  // The pair that is usually given for Dice's coefficient on pairs of letters (from memory): night, nacht share one pair of four each.
  test.each([['night', 'nacht', 0.25], ['Pump', 'pump', 1], ['ab', 'cd', 0], ['', '', 1], ['a', 'b', 0]])('%s and %s', (a, b, likeness) => {
    expect(textLikeness(a, b)).toBe(likeness);
    expect(textLikeness(b, a)).toBe(likeness);
  });

  test('the game of gloves: one left, two right (textbook example of the Shapley value, from memory): 2/3, 1/6, 1/6', () => {
    const parts = split(3, ([left, one, other]) => new Decimal(left === 'after' && (one === 'after' || other === 'after') ? 6 : 0));
    expect(parts?.map(String)).toEqual(['4', '1', '1']);
  });
});
