import { describe, expect, test } from 'vitest';
import { fileLimits } from '../../src/estimate/index.js';
import { resolveWithin } from '../../src/service/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const shop = 'steelyard 1\nshop "Bench"\n  rate bench 100.00\nlabour swap "Swap" 4 h\n';
const saysAll = (files: Readonly<Record<string, string>>, first = 'estimate.yard') => [...serviceOver(files).service.allDiagnostics(uriOf(first))].flatMap(([uri, list]) => list.map((one) => `${uri.slice(6)}: ${one.code}`));

describe('shared files', () => {
  test('one that two files use is read once', () => {
    const { host, service } = serviceOver({
      'estimate.yard': 'steelyard 1\nuse "jobs.yard"\nuse "parts.yard"\noption used "Used"\n  do swap\n  fit mounts\n',
      'jobs.yard': 'steelyard 1\nuse "shop.yard"\n',
      'parts.yard': 'steelyard 1\nuse "shop.yard"\npart mounts "Mounts" 20.00 new\n',
      'shop.yard': shop,
    });
    expect(service.allDiagnostics(uriOf('estimate.yard')).size).toBe(0);
    expect(service.uses(uriOf('estimate.yard'))).toEqual(['jobs.yard', 'shop.yard', 'parts.yard'].map(uriOf));
    const { resolved, comparison } = service.weighing(uriOf('estimate.yard'));
    expect(resolved.records.filter((record) => record.kind.word === 'shop')).toHaveLength(1);
    expect(comparison.options[0]?.totals.total.likely.toFixed(2)).toBe('420.00');
    expect(host.reads).toContain(uriOf('shop.yard'));
  });

  test('one that is used twice by one file is read once', () => {
    expect(saysAll({ 'estimate.yard': 'steelyard 1\nuse "shop.yard"\nuse "./shop.yard"\nuse "jobs/../shop.yard"\n', 'shop.yard': shop })).toEqual([]);
  });

  test('paths start at the folder of the file that says them', () => {
    expect(saysAll({
      'jobs/estimate.yard': 'steelyard 1\nuse "../shared/jobs.yard"\n',
      'shared/jobs.yard': 'steelyard 1\nuse "deep/shop.yard"\n',
      'shared/deep/shop.yard': shop,
    }, 'jobs/estimate.yard')).toEqual([]);
  });

  test('one that is not read yet is waited for, and then counts', () => {
    const { host, service } = serviceOver([{ name: 'estimate.yard', text: 'steelyard 1\nuse "shop.yard"\noption used "Used"\n  do swap\n', unread: false }, { name: 'shop.yard', text: '', unread: true }]);
    expect(service.waitsFor(uriOf('estimate.yard'))).toEqual([uriOf('shop.yard')]);
    expect(service.allDiagnostics(uriOf('estimate.yard')).size).toBe(0);
    expect(service.weighing(uriOf('estimate.yard')).comparison.options[0]?.complete).toBe(false);
    host.set('shop.yard', shop);
    expect(service.waitsFor(uriOf('estimate.yard'))).toEqual([]);
    expect(service.weighing(uriOf('estimate.yard')).comparison.options[0]?.totals.total.likely.toFixed(2)).toBe('400.00');
  });

  test('one that goes missing and comes back', () => {
    const { host, service } = serviceOver({ 'estimate.yard': 'steelyard 1\nuse "shop.yard"\noption used "Used"\n  do swap\n', 'shop.yard': shop });
    const said = () => service.diagnostics(uriOf('estimate.yard')).map((one) => one.code);
    expect(said()).toEqual([]);
    host.remove('shop.yard');
    expect(said()).toEqual(['use-missing']);
    expect(service.uses(uriOf('estimate.yard'))).toEqual([uriOf('shop.yard')]);
    host.set('shop.yard', shop);
    expect(said()).toEqual([]);
  });

  test('a chain goes as deep as the limit and no deeper', () => {
    const chain = (length: number) => Object.fromEntries(Array.from({ length }, (_, i) => [i === 0 ? 'estimate.yard' : `f${i}.yard`, `steelyard 1\n${i + 1 < length ? `use "f${i + 1}.yard"\n` : ''}`]));
    expect(saysAll(chain(fileLimits.depth))).toEqual([]);
    expect(saysAll(chain(fileLimits.depth + 1))).toEqual([`f${fileLimits.depth - 1}.yard: use-too-many`]);
  });

  test('problems are told in the file where they are, whichever file is asked for', () => {
    const files = {
      'a.yard': 'steelyard 1\nuse "shop.yard"\nvehicle "Van"\n  worth 1,000\n',
      'b.yard': 'steelyard 1\nuse "shop.yard"\n',
      'shop.yard': 'steelyard 1\nshop "Bench"\n  rate bench 1OO.00\n',
    };
    const { service } = serviceOver(files);
    expect(service.diagnostics(uriOf('a.yard')).map((one) => one.code)).toEqual(['thousands-comma']);
    expect(service.diagnostics(uriOf('b.yard'))).toEqual([]);
    for (const name of ['a.yard', 'b.yard', 'shop.yard']) {
      const inShop = service.allDiagnostics(uriOf(name)).get(uriOf('shop.yard')) ?? [];
      expect(inShop.map(({ code, range }) => [code, files['shop.yard'].slice(range.start, range.end)])).toEqual([['not-a-number', '1OO.00']]);
    }
  });
});

describe('a path stays within the root', () => {
  const inside: readonly (readonly [string, string, string])[] = [
    ['/w/e.yard', 'shop.yard', '/w/shop.yard'],
    ['/w/jobs/e.yard', '../shop.yard', '/w/shop.yard'],
    ['/w/jobs/e.yard', './a/./b/../shop.yard', '/w/jobs/a/shop.yard'],
    ['/w/jobs/e.yard', 'a//shop.yard', '/w/jobs/a/shop.yard'],
    ['/w/e.yard', 'Größen und Maße.yard', '/w/Größen und Maße.yard'],
    ['/w/e.yard', '...', '/w/...'],
    ['/w/e.yard', '..shop.yard', '/w/..shop.yard'],
    ['/w/e.yard', '%2e%2e/shop.yard', '/w/%2e%2e/shop.yard'],
  ];
  test.each(inside)('%s uses %s', (from, path, leadsTo) => {
    expect(resolveWithin('/w', from, path)).toBe(leadsTo);
    expect(resolveWithin('/w/', from, path)).toBe(leadsTo);
  });

  const hostile = [
    '', '.', './', '..', '../', '../x.yard', '../../w/e.yard', 'a/../../x.yard', 'a/b/../../../x.yard', './../x.yard', 'a/./../../x.yard', '../w2/x.yard',
    '/etc/shop.yard', '/w/shop.yard', '//host/share.yard', '\\\\host\\share.yard', 'a\\b.yard', '..\\x.yard', 'C:/x.yard', 'c:x.yard', 'C:\\x.yard',
    'file:///w/shop.yard', 'https://shop.example/x.yard', 'data:text/plain,x', 'git+ssh://x', 'a\0b.yard', 'a\nb.yard', 'x'.repeat(2000), 'jobs/..',
  ];
  test.each(hostile)('%j leads nowhere', (path) => {
    expect(resolveWithin('/w', '/w/e.yard', path)).toBeUndefined();
  });

  test('a file outside the root uses nothing', () => {
    expect(resolveWithin('/w', '/other/e.yard', 'shop.yard')).toBeUndefined();
    expect(resolveWithin('/w', '/w2/e.yard', 'shop.yard')).toBeUndefined();
  });
});
