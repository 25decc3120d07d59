import { describe, expect, test } from 'vitest';
import { rowsAt } from '../../src/editor/here.js';
import { restored, saved, trialOf } from '../../src/editor/trials.js';
import { comparisonPage, decisionTargets, decisionView, derivationFields, derivationsOf, derivationTargets, keepLastGood, targetsOf, type PictureSource } from '../../src/report/page/index.js';
import { stepped } from '../../src/page/stepped.js';
import { isWellFormed, sampleTexts, serviceOver } from './estimates.js';

const uri = '/pilgrim-v6.yard';

function world() {
  const texts = sampleTexts('pilgrim-v6.yard');
  const service = serviceOver(texts);
  const weighing = service.weighing(uri);
  const columns = keepLastGood([], weighing);
  return { texts, service, columns, ...weighing };
}

describe('a row unfolded', () => {
  const { service, columns, comparison, texts } = world();
  const rows = ['.row.total', '.row.access', '.row.tax', 'used.line.1', 'rebuild.tax.1'];
  const derivations = derivationsOf(columns, rows);
  const markup = comparisonPage({ comparison, columns, lineOf: () => undefined, derivations });

  test('says how its figures were made, each option by itself', () => {
    expect([...derivations.keys()]).toEqual(rows);
    expect(derivations.get('.row.total')?.map(({ column }) => column.key)).toEqual(columns.map(({ key }) => key));
    expect(markup).toContain('data-unfold=".row.total" aria-expanded="true"');
    expect(markup).toContain('data-unfold=".row.labour" aria-expanded="false"');
    expect(isWellFormed(markup)).toBe(true);
  });

  test('the steps shown add up to what stands in the row', () => {
    for (const { root } of derivations.get('.row.total') ?? []) {
      expect(root.left).toBe(0);
      expect(root.from.reduce((sum, { figure }) => sum.plus(figure.likely), root.figure.likely.times(0)).toFixed(2)).toBe(root.figure.likely.toFixed(2));
    }
  });

  test('every written figure in it leads to its text, and has a field that holds what the text says', () => {
    const targets = derivationTargets(derivations);
    const fields = derivationFields(derivations);
    expect(fields.size).toBeGreaterThan(30);
    for (const [id, [at]] of targets) expect(at === undefined ? undefined : service.place(at), id).toBeDefined();
    for (const { field, at } of fields.values()) {
      const place = service.place(at);
      expect(texts.get(place?.uri ?? '')?.slice(place?.range.start, place?.range.end)).toContain(field.today);
    }
    expect([...fields.values()].map(({ field }) => field.names)).toContain('“Coolant pump: replace” (time with engine-out)');
  });

  test('a figure tried in it gives what the changed text gives', () => {
    const found = [...derivationFields(derivations).values()].find(({ field }) => field.names === '“Coolant pump: replace” (time with engine-out)');
    const trial = found === undefined ? undefined : trialOf(found.field.id, found.field.names, found.at, '2.5', service);
    const changed = serviceOver(new Map([...texts].map(([file, text]) => [file, text.replace('1.6 h  with engine-out', '2.5 h  with engine-out')])));
    expect(trial === undefined ? [] : service.trying(uri, [trial]).options.map(({ inAll }) => inAll.likely.toFixed(2))).toEqual(changed.weighing(uri).comparison.options.map(({ inAll }) => inAll.likely.toFixed(2)));
  });

  test('rows that there are not have none, whatever they are called', () => {
    expect(derivationsOf(columns, ['.row.toString', '.row.', '', 'used.line.9999', 'constructor', '.row.__proto__']).size).toBe(0);
  });

  test('a sum of very many lines is cut, and says so', () => {
    const many = serviceOver(new Map([['/a.yard', `steelyard 1\noption a "A"\n${'  part "P" 1.00\n'.repeat(1000)}option b "B"\n  part "Q" 1.00\n`]]));
    const now = many.weighing('/a.yard');
    const shown = keepLastGood([], now);
    const page = comparisonPage({ comparison: now.comparison, columns: shown, lineOf: () => undefined, derivations: derivationsOf(shown, ['.row.parts']) });
    expect(page).toContain('and 940 more; see line by line');
  });
});

describe('the line under the cursor', () => {
  const { service, columns, comparison, texts } = world();
  const view = decisionView(service.decision(uri), columns);
  const targets = [targetsOf(columns, comparison.estimate), decisionTargets(view)];
  const at = (file: string, words: string, more = 0) => rowsAt(targets, file, (texts.get(file) ?? '').indexOf(words) + more, (span) => span, service);

  test.each<[words: string, rows: RegExp[]]>([
    ['labour pump', [/^rebuild\.line\.\d+$/, /^used\.line\.\d+$/, /^exchange\.line\.\d+$/]],
    ['takes    4.5 h', [/^rebuild\.line\.\d+$/, /^used\.line\.\d+$/, /^exchange\.line\.\d+$/]],
    ['part        "Used engine, 92 000 mi"', [/^used\.line\.\d+$/, /^\.flip\.\d$/]],
    ['option used', [/^used\.head$/]],
    ['warranty    3 mo', [/^used\.head$/]],
    ['finding burnt-valve', [/^\.finding\.3$/]],
    ['picture  "pictures', [/^\.finding\.3$/]],
    ['inspect gas-test', [/^\.inspect\.2$/]],
    ['coverage valves', [/^\.coverage\.1$/]],
  ])('%s', (words, rows) => {
    const found = at(uri, words, 2);
    for (const row of rows) expect(found.some((one) => row.test(one)), `${String(row)} in ${found.join(' ')}`).toBe(true);
    expect(found.filter((one) => !rows.some((row) => row.test(one)) && !one.startsWith('.'))).toEqual([]);
  });
  test('in the shop’s file too', () => expect(at('/shop.yard', 'part engine-oil').some((one) => one.startsWith('used.line.'))).toBe(true));
  test.each(['# Ways in', 'steelyard 1', 'use "shop'])('nothing for %s', (words) => expect(at(uri, words)).toEqual([]));
  test('is answered at every offset of every file, and in none that is not there', () => {
    for (const [file, text] of texts) for (let offset = 0; offset <= text.length + 1; offset++) expect(Array.isArray(rowsAt(targets, file, offset, (span) => span, service))).toBe(true);
    expect(rowsAt(targets, '/none.yard', 0, (span) => span, service)).toEqual([]);
  });
});

describe('a trial kept over a restart', () => {
  const { service, texts, columns } = world();
  const field = derivationFields(derivationsOf(columns, ['.row.parts'])).values().next().value;
  const trial = field === undefined ? undefined : trialOf(field.field.id, field.field.names, field.at, '7.77', service);

  test('is the same trial in a new session', () => {
    if (trial === undefined) throw new Error('no trial');
    const kept = JSON.parse(JSON.stringify(saved(trial))) as ReturnType<typeof saved>;
    const again = serviceOver(texts);
    const back = restored(kept, again);
    expect(back === undefined ? undefined : again.trying(uri, [back]).options.map(({ inAll }) => inAll.likely.toFixed(2))).toEqual(service.trying(uri, [trial]).options.map(({ inAll }) => inAll.likely.toFixed(2)));
  });

  test('is gone where its line reads otherwise, or no figure stands there', () => {
    if (trial === undefined) throw new Error('no trial');
    const kept = saved(trial);
    for (const wrong of [{ line: `${kept.line} ` }, { nth: kept.nth + 1 }, { column: 0 }, { column: 10_000 }, { length: 10_000 }, { uri: '/none.yard' }, { value: '1e9' }]) expect(restored({ ...kept, ...wrong }, service), JSON.stringify(wrong)).toBeUndefined();
  });
});

test.each([
  ['1350', '1350', 1, '1360'], ['1350', '1350', -2, '1330'], ['1350', '1350', 10, '1450'], ['6.5', '6.5', 1, '6.6'], ['0.5', '0.5', -9, '0.0'], ['132.00', '132.00', 1, '133.00'],
  ['0', '0', 3, '3'], ['12', '12.00', 1, '12.10'], ['', '1', 1, undefined], ['1,350', '1350', 1, undefined], ['5', 'x', 1, undefined], ['999999999999', '999999999999', 0, '999999999999'],
])('%s of %s, %i steps on, is %s', (from, today, steps, expected) => {
  expect(stepped(from, today, steps)).toBe(expected);
});

test('findings stand on the page with their pictures, where these can be shown', () => {
  const { columns, comparison } = world();
  const page = (pictureOf?: (of: string) => PictureSource) => comparisonPage({ comparison, columns, lineOf: () => undefined, ...(pictureOf === undefined ? {} : { pictureOf }) });
  expect(page((of) => ({ kind: 'shown', address: `https://pictures${of}` }))).toContain('<img src="https://pictures/pictures/finding-valve-4.png" alt="Exhaust valve 4 burnt at the edge"');
  const absent = 'Not shown: no picture in this workspace';
  expect(page()).toContain(absent);
  expect(page(() => ({ kind: 'absent' }))).toContain(absent);
  expect(page(() => ({ kind: 'awaited' }))).not.toContain(absent);
  expect(page(() => ({ kind: 'shown', address: 'x" onerror="alert(1)' }))).not.toContain('" onerror="');
  expect(page()).toContain('compression 171 168 173 38 169 170 psi');
});
