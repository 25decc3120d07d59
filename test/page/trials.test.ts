import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { homeOf, MOST_TRIALS, stillTried, trialOf, withTrial, type KeptTrial } from '../../src/editor/trials.js';
import { comparisonPage, decisionPart, decisionView, keepLastGood, writtenFigure } from '../../src/report/page/index.js';
import { decide } from '../../src/weigh/index.js';
import { figuresIn, isWellFormed, sampleTexts, serviceOver } from './estimates.js';

const names = readdirSync(path.resolve(import.meta.dirname, '../../samples')).filter((name) => name.endsWith('.yard') && name !== 'shop.yard');

function worldOf(name: string) {
  const texts = sampleTexts(name);
  const uri = `/${name}`;
  const service = serviceOver(texts);
  const decision = service.decision(uri);
  const { rows } = { rows: decisionView(decision, keepLastGood([], service.weighing(uri))).flips };
  const trialAt = (i: number, value: string): KeptTrial => {
    const row = rows[i];
    const trial = row?.field === undefined ? undefined : trialOf(row.field.id, row.field.names, row.at, value, service);
    if (trial === undefined) throw new Error('no trial');
    return trial;
  };
  return { texts, uri, service, decision, rows, trialAt };
}

describe.each(names)('figures tried in the page of %s', (name) => {
  const { texts, uri, service, decision, rows, trialAt } = worldOf(name);

  test('each figure has one field, which holds what the file says', () => {
    const fields = rows.flatMap(({ field, at }) => (field === undefined ? [] : [{ field, at }]));
    expect(fields.length).toBeGreaterThan(0);
    expect(new Set(fields.map(({ field }) => field.id)).size).toBe(fields.length);
    expect(new Set(rows.map(({ at }) => `${at.block.text}${at.start}`)).size).toBe(fields.length);
    for (const { field, at } of fields) expect(at.block.text.slice(at.start, at.end)).toContain(field.today);
  });

  test('the page with a trial shows what the changed text comes to, and the file stays', () => {
    for (const [i, { field }] of rows.entries()) {
      if (field === undefined) continue;
      const trials = [trialAt(i, '7.25')];
      const before = texts.get(uri);
      const tried = service.trying(uri, trials);
      const columns = keepLastGood([], { comparison: tried, problems: service.weighing(uri).problems });
      const page = comparisonPage({ comparison: tried, columns, lineOf: () => undefined, trying: { trials: [{ id: field.id, names: field.names, value: '7.25', instead: field.today }], dropped: [] } });
      const home = homeOf(trials);
      const view = decisionView(decide(tried), columns, { decision, home, valueOf: (at) => trials.find((one) => one.at.start === at.start && one.at.block === at.block)?.value });
      const edit = service.trialEdit(trials[0] as KeptTrial);
      const changed = new Map([...texts].map(([file, text]) => [file, edit?.uri === file ? text.slice(0, edit.edit.range.start) + edit.edit.text + text.slice(edit.edit.range.end) : text]));
      const after = serviceOver(changed).weighing(uri);
      const expected = figuresIn(comparisonPage({ comparison: after.comparison, columns: keepLastGood([], after), lineOf: () => undefined }));
      expect([...figuresIn(page)], field.names).toEqual([...expected]);
      expect(texts.get(uri)).toBe(before);
      expect(page).toContain('data-act="write"');
      expect(isWellFormed(page) && isWellFormed(decisionPart(view))).toBe(true);
      // The rows of the file stay where they are, so that the field does not move away from under the hand.
      expect(view.flips.slice(0, rows.length).map((row) => row.field?.id)).toEqual(rows.map((row) => row.field?.id));
      expect(view.flips[i]?.field?.value).toBe('7.25');
      // All that leads somewhere still does.
      for (const { at } of view.flips) expect(service.place(at)).toBeDefined();
      for (const { option } of tried.options) if (option.written) expect(service.place(home(option.at)), option.name).toBeDefined();
    }
  });
});

describe('trials while the text is edited', () => {
  const edited = (change: (text: string) => string) => {
    const { texts, uri, service, trialAt, rows } = worldOf('pilgrim-v6.yard');
    const trial = trialAt(0, '1500.00');
    texts.set(uri, change(texts.get(uri) ?? ''));
    service.weighing(uri);
    return { ...stillTried([trial], service), trial, service, text: rows[0]?.field?.today ?? '' };
  };

  test('stay with edits elsewhere, also in the same option and above', () => {
    for (const change of [(text: string) => text, (text: string) => text.replace('steelyard 1', 'steelyard 1\n# above\n'), (text: string) => text.replace('core 150.00', 'core 160.00'), (text: string) => text.replace(/arrives 6 d/, 'arrives 7 d')]) {
      const { trials, dropped, trial, service } = edited(change);
      expect(dropped).toEqual([]);
      const at = trials[0]?.at;
      expect(at?.block.text.slice(at.start, at.end)).toBe(trial.at.block.text.slice(trial.at.start, trial.at.end));
      expect(at === undefined ? undefined : service.place(at)).toBeDefined();
    }
  });

  test('end with an edit of their own line, or with the line', () => {
    const { trial } = edited((text) => text);
    for (const change of [(text: string) => text.replace(trial.line, `${trial.line} `), (text: string) => text.replace(trial.line, ''), () => '']) {
      const { trials, dropped } = edited(change);
      expect([trials.length, dropped.length]).toEqual([0, 1]);
    }
  });

  test('are twenty at most, and one for a figure', () => {
    const { trialAt } = worldOf('pilgrim-v6.yard');
    const one = trialAt(0, '1.00');
    const many = Array.from({ length: 30 }, (_, i) => ({ ...one, at: { ...one.at, start: i } })).reduce<readonly KeptTrial[]>(withTrial, []);
    expect(many).toHaveLength(MOST_TRIALS);
    expect(withTrial([one], trialAt(0, '2.00')).map(({ value }) => value)).toEqual(['2.00']);
  });
});

test.each([['1150 / 1350 / 2100', '1350', ''], ['132.00', '132.00', ''], ['8.25%', '8.25', '%'], ['45 min', '45', 'min'], ['6.0/6.5/8.0 h', '6.5', 'h'], ['64.30 USD', '64.30', 'USD']])('%s is written as %s with “%s” behind it', (text, value, unit) => {
  expect(writtenFigure({ block: { text } as never, start: 0, end: text.length })).toEqual({ value, unit });
});
