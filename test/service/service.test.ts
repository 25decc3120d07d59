import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { statementsOf } from '../../src/language/index.js';
import { createLanguageService, type LanguageService } from '../../src/service/index.js';
import { allKinds } from '../../src/vocabulary/index.js';
import type { Figure } from '../../src/weigh/index.js';
import { anyText, apply, edit, goodFiles, noise } from '../language/noise.js';
import { MemoryHost, serviceOver, uriOf } from '../support/fixture.js';

/** Everything that can be seen of an estimate, as text. */
function everything(service: LanguageService, uri: string): unknown {
  const { comparison, resolved } = service.weighing(uri);
  return {
    diagnostics: [...service.allDiagnostics(uri)].sort(([a], [b]) => (a < b ? -1 : 1)),
    uses: resolved.uses,
    waitsFor: resolved.waitsFor,
    options: comparison.options.map(({ option, complete, totals, net, inAll, penalty, ready, planned, open }) => ({
      name: option.name, complete, date: ready.date, latest: ready.latest,
      figures: [totals.total, totals.hours, totals.tax, net, inAll, penalty.money, penalty.hours, ready.days].map(numbersOf),
      lines: totals.lines.map((line) => [line.title, ...numbersOf(line.amount), service.place(line.at)]),
      paid: planned.chosen.paid.map((way) => way.name),
      others: planned.others.map((plan) => plan.money.toFixed()),
      open: open.map((one) => [one.job.title, one.now.likely.toFixed(), one.alone.likely.toFixed()]),
    })),
    ranking: comparison.ranking.map(({ option }) => option.name),
  };
}

const numbersOf = (figure: Figure) => [figure.low.toFixed(), figure.likely.toFixed(), figure.high.toFixed()];

const estimates = Object.keys(goodFiles).filter((name) => /\buse "/.test(goodFiles[name] as string));

describe('a service that has lived through edits', () => {
  const step = fc.record({ which: fc.nat(2), edit });

  test('says what a fresh one says', () => {
    fc.assert(fc.property(fc.constantFrom(...estimates), fc.array(step, { minLength: 1, maxLength: 4 }), (name, steps) => {
      const { host, service } = serviceOver(goodFiles);
      const texts: Record<string, string> = { ...goodFiles };
      everything(service, uriOf(name));
      for (const { which, edit: one } of steps) {
        const file = which === 0 ? 'shop.yard' : name;
        texts[file] = apply(texts[file] as string, one);
        host.set(file, texts[file]);
        expect(everything(service, uriOf(name))).toEqual(everything(createLanguageService(host), uriOf(name)));
      }
    }), { numRuns: 25 });
  });

  test('comes back to what it said when an edit is taken back', () => {
    fc.assert(fc.property(fc.constantFrom(...estimates), edit, (name, one) => {
      const { host, service } = serviceOver(goodFiles);
      const before = everything(service, uriOf(name));
      host.set(name, apply(goodFiles[name] as string, one));
      everything(service, uriOf(name));
      host.set(name, goodFiles[name] as string);
      expect(everything(service, uriOf(name))).toEqual(before);
    }), { numRuns: 15 });
  });

  test('keeps its work where nothing changed', () => {
    const { host, service } = serviceOver(goodFiles);
    const name = estimates[0] as string;
    const first = service.weighing(uriOf(name));
    host.set('titles.yard', 'steelyard 1\n');
    expect(service.weighing(uriOf(name))).toBe(first);
    host.set('shop.yard', `${goodFiles['shop.yard'] as string}# a remark\n`);
    expect(service.weighing(uriOf(name))).not.toBe(first);
  });

  test('serves two estimates over one shop without mixing them up', () => {
    const { host, service } = serviceOver(goodFiles);
    const [a, b] = estimates as [string, string];
    for (const one of [a, b, a, b]) expect(everything(service, uriOf(one))).toEqual(everything(createLanguageService(host), uriOf(one)));
    host.set('shop.yard', (goodFiles['shop.yard'] as string).replace(/^ {2}rate (\w+)(.*?)(\d+\.\d\d)/m, '  rate $1$2199.00'));
    for (const one of [a, b, a]) expect(everything(service, uriOf(one))).toEqual(everything(createLanguageService(host), uriOf(one)));
  });

  test('forgets a file that is gone', () => {
    const { host, service } = serviceOver({ 'estimate.yard': 'steelyard 1\nworth 1\n' });
    expect(service.diagnostics(uriOf('estimate.yard'))).toHaveLength(1);
    host.remove('estimate.yard');
    service.forget(uriOf('estimate.yard'));
    expect(service.diagnostics(uriOf('estimate.yard'))).toEqual([]);
    expect(service.tree(uriOf('estimate.yard'))).toBeUndefined();
    expect(service.hover(uriOf('estimate.yard'), 3)).toBeUndefined();
  });
});

describe('line noise', () => {
  test('goes through the whole service without an exception, and no figure is anything but a number', () => {
    fc.assert(fc.property(anyText, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 3 }), (text, places) => {
      const { service } = serviceOver({ ...goodFiles, 'noise.yard': text });
      const uri = uriOf('noise.yard');
      const seen = JSON.stringify(everything(service, uri));
      expect(seen).not.toMatch(/NaN|Infinity|undefined/);
      for (const [file, list] of service.allDiagnostics(uri)) {
        const length = service.tree(file)?.text.length ?? 0;
        for (const { range, message } of list) {
          expect(range.start >= 0 && range.start <= range.end && range.end <= length).toBe(true);
          expect(message.what !== '' && message.why !== '' && message.instead !== '').toBe(true);
        }
      }
      for (const place of places) {
        const said = service.hover(uri, Math.floor(place * (text.length + 2)));
        expect(said?.paragraphs.join(' ') ?? '').not.toMatch(/NaN|Infinity|undefined/);
      }
    }), { numRuns: 150 });
  });

  test('no place gets two messages of one code', () => {
    fc.assert(fc.property(noise, (text) => {
      const { service } = serviceOver({ 'noise.yard': text });
      const keys = service.diagnostics(uriOf('noise.yard')).map(({ code, range }) => `${code} ${range.start} ${range.end}`);
      expect(new Set(keys).size).toBe(keys.length);
    }), { numRuns: 100 });
  });

  test('in a shared file spoils no other file', () => {
    fc.assert(fc.property(noise, (text) => {
      const { service } = serviceOver({ 'shop.yard': text, 'estimate.yard': 'steelyard 1\nuse "shop.yard"\nnote "All is well here"\n' });
      expect(service.diagnostics(uriOf('estimate.yard')).filter(({ code }) => !code.startsWith('use-'))).toEqual([]);
    }), { numRuns: 60 });
  });
});

describe('hover', () => {
  const text = [
    'steelyard 1', 'shop "Bench"', '  currency USD', '  rate bench 132.00', 'access out "Engine out"', '  remove 2 h', '  refit 3 h',
    'labour pump "Coolant pump: replace"', '  takes 9.0 h', '  takes 1.6 h with out', 'part seal "Seal" 2 at 5.85 new',
    'option fix "Fix it"', '  do pump', '  fit seal', '  way out', '  labour "Road test" 30 min', '',
  ].join('\n');
  const { service } = serviceOver({ 'estimate.yard': text });
  const over = (what: string, into = 0) => service.hover(uriOf('estimate.yard'), text.indexOf(what) + into)?.paragraphs.join('\n') ?? '';

  test('on a labour line shows its amount, its hours and its option', () => {
    expect(over('pump "Cool')).toContain('Coolant pump: replace: 211.20 for 1.6 h with out = 1.6 h × 132.00 — in fix');
    expect(over('"Road test"')).toContain('66.00 for 0.5 h');
  });

  test('on a way in shows its amounts', () => {
    expect(over('2 h')).toContain('264.00');
    expect(over('3 h')).toContain('396.00');
  });

  test('on a part line shows how many at how much', () => {
    expect(over('"Seal"')).toContain('11.70 = 2 × 5.85');
  });

  test('on an option shows its total and its access penalty', () => {
    expect(over('"Fix it"')).toContain('Fix it: 948.90, of which 660.00 access penalty');
  });

  test('on a first word says what it means', () => {
    expect(over('labour pump', 2)).toContain('labour: Work that the shop does.');
    expect(over('way out', 1)).toContain('way: Pins the way in');
    for (const statement of statementsOf(service.tree(uriOf('estimate.yard')) as NonNullable<ReturnType<typeof service.tree>>)) {
      const word = statement.tokens[0]?.text ?? '';
      const kind = allKinds.find((one) => one.word === word);
      if (kind !== undefined) expect(over(word, 1)).not.toBe('');
    }
  });

  test('off any line says nothing', () => {
    expect(service.hover(uriOf('estimate.yard'), text.length + 100)).toBeUndefined();
    expect(service.hover(uriOf('nowhere.yard'), 0)).toBeUndefined();
  });
});

describe('the facade', () => {
  test('is frozen, and reads nothing but what it is asked for', () => {
    const { host, service } = serviceOver(goodFiles);
    expect(Object.isFrozen(service)).toBe(true);
    service.diagnostics(uriOf('titles.yard'));
    expect(new Set(host.reads)).toEqual(new Set([uriOf('titles.yard')]));
  });

  test('lives with a host that has nothing', () => {
    const service = createLanguageService(new MemoryHost());
    expect(service.allDiagnostics(uriOf('estimate.yard')).size).toBe(0);
    expect(service.weighing(uriOf('estimate.yard')).comparison.options).toEqual([]);
    expect(service.uses(uriOf('estimate.yard'))).toEqual([]);
  });
});
