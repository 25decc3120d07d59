import { describe, expect, test } from 'vitest';
import { comparisonPage, keepLastGood, targetsOf, type Column } from '../../src/report/page/index.js';
import { figuresIn, sampleTexts, serviceOver } from './estimates.js';

const file = '/pilgrim-v6.yard';

/** An estimate on show while it is typed in. */
function typing() {
  const texts = sampleTexts('pilgrim-v6.yard');
  const service = serviceOver(texts);
  let columns: readonly Column[] = [];
  return {
    service,
    show: (change: (text: string) => string = (text) => text, of = file): readonly Column[] => {
      texts.set(of, change(texts.get(of) ?? ''));
      const { comparison, problems } = service.weighing(file);
      columns = keepLastGood(columns, { comparison, problems });
      return columns;
    },
    page: (): string => {
      const lineOf = (span: Parameters<typeof service.place>[0]) => {
        const place = service.place(span);
        return place === undefined ? undefined : { line: (texts.get(place.uri) ?? '').slice(0, place.range.start).split('\n').length, file: place.uri === file ? undefined : place.uri.slice(1) };
      };
      return comparisonPage({ comparison: service.weighing(file).comparison, columns, lineOf });
    },
  };
}

const totals = (columns: readonly Column[]) => Object.fromEntries(columns.map((column) => [column.key, [column.state, column.weighed.totals.total.likely.toFixed(2)]]));

describe('last good figures', () => {
  test('stay for the option whose line is broken, and only for that one', () => {
    const { show, page } = typing();
    const before = totals(show());
    const broken = show((text) => text.replace('1150 / 1350 / 2100 used', '1150 / 1,350 / 2100 used'));
    expect(totals(broken)).toEqual({ ...before, used: ['last-good', before['used']?.[1]] });
    const line = sampleTexts('pilgrim-v6.yard').get(file)?.split('\n').findIndex((one) => one.includes('1350')) ?? -1;
    expect(page()).toContain(`last good figures; <button type="button" data-figure="used.broken">line ${line + 1}</button> can’t be read`);
    expect(totals(show((text) => text.replace('1,350', '1350')))).toEqual(before);
  });

  test('stay for all options that a broken shared line spoils', () => {
    const { show, page } = typing();
    const before = totals(show());
    const broken = totals(show((text) => text.replace('132.00 usual', '132.0.0  usual'), '/shop.yard'));
    expect(Object.entries(broken)).toEqual(Object.entries(before).map(([key, [, total]]) => [key, ['last-good', total]]));
    expect(page()).toMatch(/line \d+ of shop\.yard<\/button> can’t be read/);
  });

  test('keep the place of an option whose own line is broken', () => {
    const { show } = typing();
    const before = totals(show());
    const broken = show((text) => text.replace('"Fit a used engine"', '"Fit a used engine'));
    expect(broken.map(({ key }) => key)).toEqual(Object.keys(before));
    expect(totals(broken)['used']).toEqual(['last-good', before['used']?.[1]]);
  });

  test('stay for an option whose work was lost with its line', () => {
    const { show, page } = typing();
    const before = totals(show());
    const broken = totals(show((text) => text.replace('labour rear-head "Rear head: take off, clean faces, refit"', 'labour rear-head "Rear head: take off, clean faces, refit')));
    expect(broken).toEqual({ ...before, rebuild: ['last-good', before['rebuild']?.[1]] });
    expect(page()).toMatch(/last good figures; <button[^>]*>line \d+<\/button> can’t be read/);
  });

  test('go with an option that is taken out', () => {
    const { show } = typing();
    show();
    const left = show((text) => text.slice(0, text.indexOf('option exchange')) + text.slice(text.indexOf('# Before deciding')));
    expect(left.map(({ key }) => key)).toEqual(['rebuild', 'used', 'as-it-stands']);
  });

  test('stay for selling it as it stands, which is written below the vehicle', () => {
    const { show } = typing();
    const before = totals(show());
    const broken = totals(show((text) => text.replace('unrepaired  1900.00', 'unrepaired  1,900.00')));
    expect(broken['as-it-stands']).toEqual(['last-good', before['as-it-stands']?.[1]]);
    expect(Object.keys(totals(show((text) => text.replace('  unrepaired  1,900.00\n', ''))))).toEqual(['rebuild', 'used', 'exchange']);
  });

  test('there are none for a file that was broken from the start', () => {
    const { show, page } = typing();
    const [, used] = show((text) => text.replace('1350', '1,350'));
    expect(used?.state).toBe('not-weighed');
    expect(page()).toContain('not weighed; ');
    expect(figuresIn(page()).has('used.total')).toBe(false);
  });

  test('are never taken for today’s: they are not ranked, and lead to where they still can', () => {
    const { show, page, service } = typing();
    show();
    const broken = show((text) => text.replace('1350', '1,350'));
    expect(page().match(/class="pick">cheapest/g)).toHaveLength(1);
    const places = (targetsOf(broken, service.weighing(file).comparison.estimate).get('used.total') ?? []).flatMap((span) => service.place(span) ?? []);
    expect(places.length).toBeGreaterThan(0);
  });

  test('say what only weighing finds in other words', () => {
    const { show, page } = typing();
    show();
    show((text) => text.replace('option rebuild "Rebuild the rear head"\n', 'option rebuild "Rebuild the rear head"\n  way in-car\n'));
    expect(page()).toMatch(/last good figures; <button[^>]*>line \d+<\/button> can’t be weighed/);
  });
});
