import { afterEach, describe, expect, test, vi } from 'vitest';
import { checkSarif } from '../../src/cli/check-sarif.js';
import { foundIn } from '../../src/cli/found.js';
import { createLanguageService, sameProblem, type ServiceHost } from '../../src/service/index.js';
import { allChecks } from '../../src/service/checks/index.js';
import type { Check } from '../../src/service/checks/check.js';
import { oneOption } from '../../src/service/checks/one-option.js';
import * as view from '../../src/service/checks/view.js';
import { readMarks } from '../../src/tools/marked-example.js';

const uri = '/shop/this.yard';
/** Whole, and with one thing that a check finds. */
const { text } = readMarks(oneOption.example);
const hostOf = (read: ServiceHost['read']): ServiceHost => ({ read, resolvePath: (_, written) => `/shop/${written}` });
afterEach(() => vi.restoreAllMocks());

describe('checks that throw', () => {
  /** Checks are data; these are made to throw where they stand, for the time of one test. */
  const breaking = (codes: readonly string[]): void => {
    for (const check of allChecks.filter(({ rule }) => codes.includes(rule.code))) {
      vi.spyOn(check as { find: Check['find'] }, 'find').mockImplementation(() => { throw new RangeError(`of ${check.rule.code}`); });
    }
  };
  const codes = ['no-tax', 'core-late', 'head-without-gasket'];
  const said = (code: string): string => `The check ${code} stopped with “of ${code}”.`;

  test('are each named, once, and all others tell what they find', () => {
    breaking(codes);
    const found = createLanguageService(hostOf(() => ({ text: `${text}# so that nothing is kept of before\n` }))).diagnostics(uri);
    expect(found.filter(({ code }) => code === 'check-failed').map(({ message }) => message.what).sort()).toEqual(codes.filter((code) => allChecks.some(({ rule }) => rule.code === code)).map(said).sort());
    expect(found.map(({ code }) => code)).toContain('one-option');
    expect(new Set(found.map(sameProblem)).size).toBe(found.length);
  });

  test('are each named by the terminal, and a log for build servers says that it is not whole', () => {
    breaking(codes);
    const host = hostOf(() => ({ text: `${text}# so that nothing is kept of before, either\n` }));
    const { asked, found } = foundIn([uri], createLanguageService(host), { host, open: (file) => file, nameOf: (file) => file, forget: () => undefined });
    expect(found.filter(({ finding }) => finding.code === 'check-failed').map(({ finding }) => finding.what).sort()).toEqual(codes.map(said).sort());
    const log = checkSarif(asked, found, { version: '1.2.3', fine: true }, (file) => ({ identity: file, path: 'this.yard', from: 'source-root' }));
    expect(log.runs[0]?.invocations).toEqual([{ executionSuccessful: false, exitCode: 0 }]);
  });

  test('take no figure with them, nor does what prepares all of them', () => {
    vi.spyOn(view, 'viewOf').mockImplementation(() => { throw new TypeError('of the view'); });
    const service = createLanguageService(hostOf(() => ({ text: `${text}part pump "Pump" 1,250.00 new\n` })));
    const whole = createLanguageService(hostOf(() => ({ text: `${text}part pump "Pump" 1,250.00 new\n` })));
    expect(service.diagnostics(uri).map(({ code }) => code)).toEqual(['check-failed', 'thousands-comma']);
    expect(service.diagnostics(uri)[0]?.message.what).toBe('The checks of the trade stopped with “of the view”.');
    vi.restoreAllMocks();
    const totals = ({ weighing }: typeof service): readonly string[] => weighing(uri).comparison.options.map(({ totals }) => totals.total.likely.toString());
    expect(totals(service)).toEqual(totals(whole));
    expect(totals(service)).not.toEqual([]);
  });
});

describe('a host that fails', () => {
  const using = `steelyard 1\nuse "shop.yard"\n${text.slice('steelyard 1\n'.length)}`;
  const shop = 'steelyard 1\nshop "S"\n  currency USD\n  rate plain "Plain" 100.00 usual\n';
  const texts: Readonly<Record<string, string>> = { [uri]: using, '/shop/shop.yard': shop };
  const fine = createLanguageService(hostOf((file) => (texts[file] === undefined ? 'missing' : { text: texts[file] })));

  test.each([1, 2, 3, 4, 5])('at its read number %i says so to who asked, and is asked again the next time', (failing) => {
    let reads = 0;
    const service = createLanguageService(hostOf((file) => {
      if (++reads === failing) throw new Error('the disk failed');
      return texts[file] === undefined ? 'missing' : { text: texts[file] };
    }));
    let threw = 0;
    for (let i = 0; i < 6; i++) {
      try {
        service.diagnostics(uri);
      } catch (error) {
        threw++;
        expect(error).toEqual(new Error('the disk failed'));
      }
    }
    expect(threw).toBe(1);
    expect(service.diagnostics(uri)).toEqual(fine.diagnostics(uri));
    expect(service.weighing(uri).comparison.options.map(({ totals }) => totals.total.likely.toString())).toEqual(fine.weighing(uri).comparison.options.map(({ totals }) => totals.total.likely.toString()));
  });

  test('to say where a path leads, or to give the book of times, says so to who asked, and is asked again', () => {
    for (const broken of ['resolvePath', 'book'] as const) {
      let left = 1;
      const host = hostOf((file) => (texts[file] === undefined ? 'missing' : { text: texts[file] }));
      const failing = <T>(usual: T): T => {
        if (left-- > 0) throw new Error('it failed');
        return usual;
      };
      const service = createLanguageService(broken === 'book' ? { ...host, book: () => failing(new Map()) } : { ...host, resolvePath: (from, written) => failing(host.resolvePath(from, written)) });
      expect(() => service.diagnostics(uri)).toThrow('it failed');
      expect(service.diagnostics(uri)).toEqual(fine.diagnostics(uri));
    }
  });

  test('to give the same text twice still gets answers, each about one text', () => {
    let reads = 0;
    const service = createLanguageService(hostOf(() => ({ text: `steelyard 1\n${'\n'.repeat(reads % 3)}option a "A"\n  part "P" ${++reads}.00 new\n` })));
    for (let i = 0; i < 20; i++) {
      const before = reads;
      const total = Number(service.weighing(uri).comparison.options[0]?.totals.total.likely);
      expect(total).toBeGreaterThan(before);
      expect(total).toBeLessThanOrEqual(reads);
      for (const one of [...service.allDiagnostics(uri).values()].flat()) expect(one.range.start).toBeLessThanOrEqual(one.range.end);
      service.hover(uri, 20);
      service.completions(uri, 20);
      service.symbols(uri);
    }
  });

  test('to read a file that is there says why in the place of calling it missing, and nobody is offered to make it', () => {
    const whyOf = (why: string | undefined) => createLanguageService({ ...hostOf((file) => (file === uri ? { text: using } : 'missing')), whyMissing: () => why });
    const said = (why: string | undefined) => whyOf(why).diagnostics(uri).filter(({ code }) => code === 'use-missing').map(({ message, text }) => ({ ...message, text }));
    const lost = 'Rates, parts and jobs from that file are missing until it can be read.';
    const [plain] = said(undefined);
    expect(plain?.what).toBe('There is no file “shop.yard” that can be read.');
    expect(plain?.why).toBe(lost);
    const made = (what: string, instead: string) => [{ what, why: lost, instead, text: `${what} ${lost} ${instead}` }];
    expect(said('is text in UTF-16, not in UTF-8. Save it in UTF-8 and try again.')).toEqual(made('“shop.yard” is text in UTF-16, not in UTF-8.', 'Save it in UTF-8 and try again.'));
    expect(said('is larger than an estimate can be.')).toEqual(made('“shop.yard” is larger than an estimate can be.', 'See that it can be read, or write the path of another file.'));
    const creates = (why: string | undefined) => whyOf(why).actions(uri, { start: 0, end: using.length }).filter((one) => one.creates !== undefined).length;
    expect([creates(undefined), creates('is a folder, not a file.')]).toEqual([1, 0]);
  });

  test('to keep a file from coming and going', () => {
    let there = true;
    const service = createLanguageService(hostOf((file) => (file === uri ? { text: using } : there ? { text: shop } : 'missing')));
    for (let i = 0; i < 4; i++) {
      expect(service.diagnostics(uri).some(({ code }) => code === 'use-missing')).toBe(!there);
      there = !there;
    }
  });
});
