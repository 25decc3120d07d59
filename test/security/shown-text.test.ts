import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { hidden } from '../../src/language/index.js';
import type { Symbol } from '../../src/service/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';
import { textAt, TURNS, wholeEstimate } from './hostile-estimates.js';

/** Nothing that can't be seen, where line ends and tabs may stand. */
const isSeen = (text: string): boolean => !hidden.test(text);

describe('what the service says about a file, in every place of an editor', () => {
  test.each(TURNS)('holds nothing that can’t be seen (turn %i)', (turn) => {
    const text = wholeEstimate(textAt(turn));
    const { service } = serviceOver({ 'estimate.yard': text });
    const uri = uriOf('estimate.yard');
    const words = [...text.matchAll(/\S+/g)].map(({ index }) => index);
    const symbol = (one: Symbol): string[] => [one.name, one.detail, ...one.children.flatMap(symbol)];
    const said: Readonly<Record<string, readonly (string | undefined)[]>> = {
      problems: service.diagnostics(uri).flatMap((one) => [one.text, one.related?.says, one.fix?.title]),
      lenses: service.lenses(uri).map(({ label }) => label),
      hints: service.inlayHints(uri, { start: 0, end: text.length }).flatMap(({ label, says }) => [label, says]),
      outline: service.symbols(uri).flatMap(symbol),
      names: service.workspaceSymbols('', [uri]).map(({ name }) => name),
      status: Object.values(service.status(uri) ?? {}),
      hovers: words.flatMap((at) => service.hover(uri, at)?.paragraphs ?? []),
      totals: words.flatMap((at) => service.totalsUsing(uri, at).flatMap(({ title, amount }) => [title, amount])),
      actions: words.flatMap((at) => service.actions(uri, { start: at, end: at }).map(({ title }) => title)),
      completions: words.filter((_, i) => i % 5 === 0).flatMap((at) => service.completions(uri, at).flatMap(({ label, detail, says }) => [label, detail, says])),
    };
    for (const [where, texts] of Object.entries(said)) {
      expect(texts.length, where).toBeGreaterThan(0);
      expect(texts.filter((one) => one !== undefined && !isSeen(one)), where).toEqual([]);
    }
  });
});

describe('what the terminal prints', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'steelyard-shown-'));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const steelyard = (cwd: string, ...args: readonly string[]) => {
    let out = '';
    let err = '';
    const code = run(args, '1.2.3', { cwd, styled: false, stdin: () => '', today: '2026-12-01', out: (text) => void (out += text), err: (text) => void (err += text) });
    return { code, out, err };
  };
  const forms: readonly (readonly string[])[] = [
    ['check'], ['check', '--as', 'json'], ['check', '--as', 'sarif'], ['weigh'], ['weigh', '--json'], ['weigh', '--explain', 'one.total'], ['records'], ['closing'], ['closing', '--json'],
    ...['html', 'csv', 'json'].map((as) => ['export', '--as', as]),
    ...['html', 'text', 'markdown'].flatMap((as) => [['quote', '--as', as], ['quote', '--stage', 'apart', '--as', as], ['quote', '--supplement', '--since', 'was.yard', '--as', as]]),
    ...['text', 'html', 'json', 'sarif'].map((as) => ['changes', 'was.yard', '--as', as]),
    ['list', '.'], ['list', '.', '--json'], ['history', '.'], ['history', '.', '--json'],
  ];
  const argsOf = (form: readonly string[], file: string): readonly string[] => (form[1] === '.' ? form : form[0] === 'changes' ? ['changes', 'was.yard', file, ...form.slice(2)] : [form[0] as string, file, ...form.slice(1)]);
  const tags = (page: string) => page.replace(/<style>[^]*?<\/style>/, '').match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));

  /** All forms of one estimate and the version before it, by their command. */
  function printed(name: string, textOf: (place: number) => string, file = 'estimate.yard') {
    const cwd = path.join(folder, name);
    mkdirSync(cwd);
    writeFileSync(path.join(cwd, file), wholeEstimate(textOf));
    writeFileSync(path.join(cwd, 'was.yard'), wholeEstimate((place) => `was ${textOf(place)}`).replace('part unit', 'part other').replace('fit unit', 'fit other').replace(/closed for[^]*/, ''));
    return new Map(forms.map((form) => [form.join(' '), steelyard(cwd, ...argsOf(form, file))]));
  }

  const harmless = new Map<string, ReturnType<typeof steelyard>>();
  beforeAll(() => printed('harmless', (place) => `place ${place}`).forEach((ran, form) => void harmless.set(form, ran)), 30_000);

  test('of a harmless estimate, every form is made and says its texts', () => {
    for (const [form, { code, out, err }] of harmless) {
      expect(code, `${form}: ${err}`).toBeLessThan(2);
      expect(out.match(/place \d+/g)?.length ?? 0, form).toBeGreaterThan(form.startsWith('list') ? -1 : /^(?:check|history)/.test(form) ? 0 : 3);
    }
  });

  test.each(TURNS)('holds nothing that can’t be seen or that a terminal obeys, and pages have no tag more (turn %i)', { timeout: 30_000 }, (turn) => {
    // The name of a file may hold nearly anything too.
    for (const [form, { code, out, err }] of printed(`turn ${turn}`, textAt(turn), `a\u001b]0;b\u0007\u202ec\u009b31m\n<img src=x> ${turn}.yard`)) {
      expect(code, `${form}: ${err}`).toBeLessThan(2);
      expect(isSeen((out + err).replaceAll('\r\n', '\n')), `${form}: ${JSON.stringify(new RegExp(`.{0,40}${hidden.source}.{0,40}`, 'u').exec(out + err)?.[0])}`).toBe(true);
      if (form.includes('html')) expect(tags(out), form).toEqual(tags(harmless.get(form)?.out ?? ''));
      if (/json|sarif|records/.test(form)) expect(() => JSON.parse(out) as unknown, form).not.toThrow();
    }
  });

  test('names that are nowhere are shown with what can’t be seen in them', () => {
    const odd = 'none\u001b[31m\u202e\u009b';
    for (const command of ['check', 'weigh', 'quote', 'closing', 'records', 'list', 'history', 'changes', `x${odd}`]) {
      const { code, err } = steelyard(folder, command, odd);
      expect({ code, seen: isSeen(err) }, command).toEqual({ code: 2, seen: true });
      expect(err, command).toContain('‹U+001B›');
    }
    writeFileSync(path.join(folder, 'one.yard'), 'steelyard 1\noption one "One"\n');
    for (const option of ['--as', '--option', '--stage', '--output', '--since', '--today', '--explain', '--none']) {
      const { code, err } = steelyard(folder, 'quote', 'one.yard', option, odd);
      expect({ code, seen: isSeen(err) }, `${option}: ${JSON.stringify(err)}`).toEqual({ code: option === '--output' ? 0 : 2, seen: true });
    }
    expect(readFileSync(path.join(folder, odd), 'utf8')).toContain('NO REPAIR');
  });
});
