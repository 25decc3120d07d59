import { describe, expect, test } from 'vitest';
import { allRules, type Action, type Diagnostic } from '../../../src/service/index.js';
import { readMarks } from '../../../src/tools/marked-example.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const THIS = 'this.yard';
type Files = Readonly<Record<string, string>>;

/** Files that examples use. */
const shared: Files = Object.fromEntries(Array.from({ length: 24 }, (_, i) => [`shared-${i + 1}.yard`, 'steelyard 1\n']));

function diagnose(files: Files): readonly Diagnostic[] {
  return [...serviceOver(files).service.allDiagnostics(uriOf(THIS)).values()].flat();
}

function actionsIn(files: Files, code: string, name = THIS): readonly Action[] {
  const { service } = serviceOver(files);
  return service.diagnostics(uriOf(name)).filter((one) => one.code === code).slice(0, 1).flatMap(({ range }) => service.actions(uriOf(name), range).filter((one) => one.code === code));
}

/** The files after an action; `fill` writes what an action leaves to the writer. */
function after(files: Files, { edits, creates }: Action, fill: (text: string) => string = (text) => text): Files {
  const out: Record<string, string> = { ...files };
  const nameOf = (uri: string) => uri.slice(uri.lastIndexOf('/') + 1);
  if (creates !== undefined) out[nameOf(creates.uri)] = creates.text;
  for (const [uri, list] of edits) {
    const name = nameOf(uri);
    for (const { range, text } of [...list].reverse()) out[name] = (out[name] as string).slice(0, range.start) + fill(text) + (out[name] as string).slice(range.end);
  }
  return out;
}

function filled(text: string): string {
  return text
    .replace(/(part [^"]*"[^"]*") +new/, '$1 1.00 new')
    .replace(/(sublet [^"]*"[^"]*")/, '$1 1.00')
    .replace(/(labour [^"]*"[^"]*")/, '$1 1 h')
    .replace(/(fee [^"]*"[^"]*")/, '$1 1.00')
    .replace(/(access [^"]*"[^"]*")/, '$1 remove 1 h refit 1 h')
    .replace('core due', 'core 10.00 due')
    .replace(/(# allow [a-z-]+:)/, '$1 as agreed');
}

/** Examples of what is too big show nothing that can be mended in a step. */
const small = allRules.filter(({ example }) => example.length < 20_000);

const cases = small.flatMap((rule) => {
  const files = { ...(rule.example.includes('shared-') ? shared : {}), [THIS]: readMarks(rule.example).text };
  return actionsIn(files, rule.code).map((action) => ({ code: rule.code, title: action.title, action, files }));
});

describe('every action mends its problem', () => {
  test.each(cases)('$code: $title', ({ code, action, files }) => {
    expect(diagnose(after(files, action)).map((one) => one.code)).not.toContain(code);
    const done = diagnose(after(files, action, filled));
    expect(done.map((one) => one.code)).not.toContain(code);
    const before = diagnose(files).filter(({ severity }) => severity === 'error').map((one) => one.code);
    expect(done.filter((one) => one.severity === 'error' && one.code !== 'no-rate' && !before.includes(one.code)).map((one) => one.text)).toEqual([]);
  });

  test('its edits of a file stand in order and never overlap', () => {
    for (const { action } of cases) for (const list of action.edits.values()) list.reduce((end, { range }) => (expect(range.start).toBeGreaterThanOrEqual(end), range.end), 0);
  });

  test('problems that can be mended in one step, or allowed, offer that', () => {
    const offered = new Set(cases.map(({ code }) => code));
    expect(allRules.filter((rule) => rule.fix !== undefined && !offered.has(rule.code)).map(({ code }) => code)).toEqual([]);
    const mayBeAllowed = small.filter(({ family, severity, code }) => !(family === 'shape' && severity === 'error') && !code.startsWith('allow-'));
    const allowing = new Set(cases.filter(({ title }) => title.startsWith('Allow ')).map(({ code }) => code));
    expect(mayBeAllowed.filter(({ code }) => !allowing.has(code)).map(({ code }) => code)).toEqual([]);
  });
});

const head = `steelyard 1
use "shop.yard"
estimate "E"
  written    2026-11-24
  start      2026-11-30
  valid      14 d
finding leaks "Head gasket leaks"

labour head "Head: take off, refit"
  takes     8 h
  because   leaks
  uses      head-bolts, bench

part head-bolts   "Head bolts"        12 at 5.85 new
part plug         "Plug"              1.00 new

sublet bench "Flatness and cracks" 200.00

option rebuild "Rebuild"
  do        head
  fit       plug
  warranty  12 mo
option stop "Stop"
  worth 100.00
`;
const shop = `steelyard 1
shop "S"
  workday 8 h
  rate bench 100.00
  tax sales 7% on parts
part oil "Engine oil" 6 qt at 7.90 new
part filter "Oil filter" 9.00 new
`;

function applied(code: string, title: RegExp, files: Files = { [THIS]: head, 'shop.yard': shop }): string {
  const action = actionsIn(files, code).find((one) => title.test(one.title));
  if (action === undefined) throw new Error(`no ${title.source} among ${actionsIn(files, code).map((one) => one.title).join('; ')}`);
  return after(files, action)[THIS] as string;
}

/** The lines that differ. */
function changes(before: string, now: string): string[] {
  const old = before.split('\n');
  return now.split('\n').filter((line) => !old.includes(line));
}

describe('a missing line', () => {
  test('goes among its like, in their columns, and the work brings it along', () => {
    expect(changes(head, applied('head-without-gasket', /^Add part/))).toEqual(['  uses      head-bolts, bench, head-gasket', 'part head-gasket  "Head gasket set"   new']);
  });

  test('is brought in by its name where the shop has it', () => {
    expect(changes(head, applied('engine-without-oil', /^Bring in/))).toEqual(['  uses      head-bolts, bench, oil']);
  });

  test('is not needed where a line covers it', () => {
    expect(changes(head, applied('head-without-gasket', /covers/))).toEqual(['  counts as head-off, head-gasket']);
    expect(changes(head, applied('head-without-gasket', /nothing/))).toEqual(['  counts as nothing']);
  });

  test('takes a name that is free', () => {
    const other = head.replace('part plug         "Plug"', 'part head-gasket  "Plug" counts as nothing').replace('fit       plug', 'fit       head-gasket');
    expect(applied('head-without-gasket', /^Add part/, { [THIS]: other, 'shop.yard': shop })).toContain('uses      head-bolts, bench, head-gasket-2');
  });

  test('of an option goes below it', () => {
    const swap = head.replace('"Head: take off, refit"', '"Swap engine"');
    expect(changes(swap, applied('swap-without-engine', /^Add part/, { [THIS]: swap, 'shop.yard': shop }))).toContain('  uses      head-bolts, bench, engine');
    const inside = head.replace('  do        head\n', '  labour "Head: take off, refit" 8 h\n    because leaks\n');
    expect(changes(inside, applied('head-without-gasket', /^Add part/, { [THIS]: inside, 'shop.yard': shop }))).toEqual(['  part "Head gasket set" new']);
  });
});

describe('other fixes', () => {
  test('a fact lines up with its neighbours', () => {
    const bare = head.replace('  warranty  12 mo\n', '');
    expect(changes(bare, applied('option-without-warranty', /warranty/, { [THIS]: bare, 'shop.yard': shop }))).toEqual(['  warranty  12 mo']);
  });

  test('a shop is made where its file is missing, and makes the estimate whole', () => {
    const files = { [THIS]: head.replace(', bench', '') };
    const action = actionsIn(files, 'use-missing').find((one) => one.creates !== undefined);
    expect(action?.creates?.uri).toBe(uriOf('shop.yard'));
    expect(diagnose(after(files, action as Action)).filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test('a name that nothing has gets its line', () => {
    const files = { [THIS]: head.replace('head-bolts, bench', 'head-bolts, bench, cover-seal'), 'shop.yard': shop };
    expect(changes(files[THIS], applied('unknown-name', /^Add a part/, files))).toEqual(['part cover-seal   "Cover seal"        new']);
  });

  test('allowing goes above a line that has a comment', () => {
    const files = { [THIS]: head.replace('option rebuild "Rebuild"', 'option rebuild "Rebuild"  # as ever').replace('  warranty  12 mo\n', ''), 'shop.yard': shop };
    const now = applied('option-without-warranty', /^Allow/, files);
    expect(now).toContain('# allow option-without-warranty:\noption rebuild');
    expect(diagnose({ ...files, [THIS]: now }).map(({ code }) => code)).toContain('allow-without-reason');
  });

  test('every action works with Windows line ends', () => {
    const files = { [THIS]: head.replace(/\n/g, '\r\n'), 'shop.yard': shop };
    for (const action of actionsIn(files, 'head-without-gasket')) expect((after(files, action)[THIS] as string).replace(/\r\n/g, '')).not.toContain('\n');
  });

  test('nothing is offered where nothing is wrong', () => {
    const { service } = serviceOver({ [THIS]: head, 'shop.yard': shop });
    expect(service.actions(uriOf(THIS), { start: 0, end: 0 })).toEqual([]);
    expect(service.actions(uriOf('nowhere.yard'), { start: 0, end: 9 })).toEqual([]);
  });
});

describe('a figure that can be read in two ways', () => {
  const titlesAt = (figure: string, code: string) => actionsIn({ [THIS]: `steelyard 1\npart p "P" ${figure} new\n` }, code).map(({ title, edits }) => [title, [...edits.values()].flat()[0]?.text]);

  test('with a point offers both, and each is clear', () => {
    expect(titlesAt('1.250', 'thousands-point')).toEqual([['Write 1250: thousands', '1250'], ['Write 1.25: decimals', '1.25']]);
    expect(titlesAt('1.125', 'thousands-point')).toEqual([['Write 1125: thousands', '1125'], ['Write 1.1250: decimals', '1.1250']]);
  });

  test('with a comma too', () => {
    expect(titlesAt('1,250', 'thousands-comma')).toEqual([['Write 1250', '1250'], ['Write 1.25: decimals', '1.25']]);
    expect(titlesAt('1,250.00', 'thousands-comma')).toEqual([['Write 1250.00', '1250.00']]);
  });
});

describe('a figure without its unit', () => {
  const titlesAt = (line: string) => actionsIn({ [THIS]: `steelyard 1\n${line}\n` }, 'unit-missing').map(({ title }) => title);

  test.each([
    ['access out "Out"\n  remove 5', ['Write 5 h', 'Write 5 min']],
    ['access out "Out"\n  remove 4 / 5 / 8', ['Write 4 / 5 / 8 h', 'Write 4 / 5 / 8 min']],
    ['option a "A"\n  warranty 12', ['Write 12 mo', 'Write 12 d', 'Write 12 wk']],
    ['labour x "X" 4', ['Write 4 h', 'Write 4 min']],
    ['labour x "X" apart after 4  class bench', ['Write 4 h', 'Write 4 min']],
    ['estimate "E"\n  valid 14', ['Write 14 d', 'Write 14 wk', 'Write 14 mo']],
    ['vehicle "V"\n  odometer 131400', ['Write 131400 mi', 'Write 131400 km']],
    ['finding f "F"\n  compression 171 168', ['Write 171 168 psi', 'Write 171 168 bar', 'Write 171 168 kPa']],
    ['finding f "F"\n  leakage 8 9', ['Write 8 9 %']],
    ['estimate "E"\n  interest 6', ['Write 6%']],
    ['estimate "E"\n  interest 0.065', ['Write 6.5%', 'Write 0.065%']],
  ])('%j: one step for each unit that it may have', (line, titles) => {
    expect(titlesAt(line)).toEqual(titles);
  });

  test('the step writes it behind the figure, and the line can be read', () => {
    const files = { [THIS]: 'steelyard 1\naccess out "Out"\n  remove 5  # as last time\n  refit 6 h\n' };
    const now = after(files, actionsIn(files, 'unit-missing')[0] as Action);
    expect(now[THIS]).toContain('  remove 5 h  # as last time\n');
    expect(diagnose(now).map(({ code }) => code)).not.toContain('unit-missing');
  });
});

test('a title where the name belongs is changed for the name of that line', () => {
  const text = 'steelyard 1\nfinding leak "Front seal leaks"\nfinding "Nameless"\nlabour seal "Seal" 1 h\n  because "Front seal leaks"\n';
  expect(actionsIn({ [THIS]: text }, 'something-missing').map(({ title, edits }) => [title, [...edits.values()].flat()[0]?.text])).toEqual([['Write leak', 'leak']]);
  expect(actionsIn({ [THIS]: text.replace('because "Front seal leaks"', 'because "Nameless"') }, 'something-missing')).toEqual([]);
});
