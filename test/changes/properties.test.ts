import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Decimal } from '../../src/vocabulary/index.js';
import { compareVersions } from '../../src/weigh/changes/index.js';
import type { Changes, Effect, Turned } from '../../src/weigh/changes/index.js';
import type { Weighed } from '../../src/weigh/index.js';
import { Draw } from '../support/random-draw.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { changed, sideOf } from './both.js';
import { blocksOf, edited, namesSwapped, renamedTo, shuffled, swappedNames, textOf } from './random-edits.js';

const draws = fc.array(fc.nat({ max: 65_535 }), { minLength: 5, maxLength: 60 }).map((numbers) => new Draw(numbers));

/** Without turns, which weigh many texts more: what the two versions say by themselves. */
function compared(before: string, after: string) {
  const read = (text: string) => {
    const { service, uri } = sideOf(text, '');
    const { resolved, comparison } = service.weighing(uri);
    return { records: resolved.records, comparison };
  };
  const [one, other] = [read(before), read(after)];
  return { ...compareVersions(one, other), sides: [one, other] as const };
}

type Compared = ReturnType<typeof compared>;

function rows({ found, follows }: Compared): readonly { readonly says: string; readonly effects: readonly Effect[] }[] {
  return [...found.map(({ draft, change }) => ({ says: `${change.sort} ${draft.key}`, effects: change.effects })), ...follows.map((one) => ({ says: `follows ${one.sort} ${one.title}`, effects: one.effects }))];
}

function sumOf(list: readonly { readonly effects: readonly Effect[] }[], option: number, key: keyof Effect): string {
  return list.reduce((all, { effects }) => all.plus((effects[option] as Effect)[key]), new Decimal(0)).toFixed();
}

/** What is told adds up to the new less the old figure. */
function expectAllTold(found: Compared): void {
  if (!found.comparable) return;
  const likely = (weighed: Weighed | undefined, key: 'total' | 'inAll') => (weighed === undefined ? new Decimal(0) : key === 'total' ? weighed.totals.total.likely : weighed.inAll.likely);
  found.weighed.forEach((pair, i) => {
    for (const key of ['total', 'inAll'] as const) {
      const name = (pair.after ?? pair.before)?.option.name ?? '';
      expect(sumOf(rows(found), i, key), `${key} of ${name}`).toBe(likely(pair.after, key).minus(likely(pair.before, key)).toFixed());
    }
  });
}

describe('what changed', () => {
  test('effects add up to the whole difference, for every option and to the smallest coin', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => { expectAllTold(compared(text, edited(text, draw))); }), runs(1101, 80));
  });

  test('where names were swapped, effects add up and the other way round is the mirror', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const after = edited(namesSwapped(text, draw), draw);
      const there = compared(text, after);
      expectAllTold(there);
      // Of two lines that took each other's names and share a title either may come first.
      const inAnyOrder = ({ changes, follows }: ReturnType<typeof told>) => [...changes.map((one) => JSON.stringify(one)).sort(), ...follows];
      expect(inAnyOrder(mirrored(compared(after, text)))).toEqual(inAnyOrder(told(there)));
    }), runs(1109, 60));
  });

  test('an edit changes something exactly where a total moves', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const found = compared(text, edited(text, draw));
      const moved = found.weighed.some(({ before, after }) => before === undefined || after === undefined || !before.inAll.likely.eq(after.inAll.likely));
      if (moved) expect(found.found.length).toBeGreaterThan(0);
      expect(found.follows.filter(({ sort, title }) => sort === 'other' && title === 'Otherwise')).toEqual([]);
    }), runs(1102, 60));
  });

  test('a version against itself, and against its own lines in another order, shows nothing', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      expect(rows(compared(text, text))).toEqual([]);
      expect(rows(compared(textOf(blocksOf(text)), shuffled(text, draw)))).toEqual([]);
    }), runs(1103, 50));
  });

  test('the other way round is the mirror', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const after = edited(text, draw);
      const [there, back] = [compared(text, after), compared(after, text)];
      expect(mirrored(back)).toEqual(told(there));
    }), runs(1104, 50));
  });

  test('another name, wherever it is used, is one change and moves nothing', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const blocks = blocksOf(text);
      const named = blocks.flatMap(([head = '']) => /^(?:labour|access|part|sublet|fee|option|tool|finding) ([a-z][\w-]*) "/.exec(head)?.[1] ?? []);
      if (named.length === 0) return;
      const found = compared(textOf(blocks), textOf(renamedTo(blocks, draw.pick(named), 'called-anew')));
      expect(found.found.map(({ change }) => change.sort)).toEqual(['renamed']);
      expect(found.follows).toEqual([]);
      expect(found.found[0]?.change.effects.every(({ total, inAll }) => total.isZero() && inAll.isZero())).toBe(true);
    }), runs(1105, 80));
  });

  test('two lines that swap their names, wherever these are used, are two changes that move nothing', PATIENT, () => {
    let swapped = 0;
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const blocks = blocksOf(text);
      const heads = blocks.flatMap(([head = '']) => {
        const [, kind = '', name = '', title = ''] = /^(labour|access|part|sublet|fee|option|tool|finding) ([a-z][\w-]*) ("(?:[^"\\]|\\.)*")/.exec(head) ?? [];
        return kind === '' ? [] : [{ kind, name, title }];
      });
      // A name or title that two lines have tells nothing.
      const lone = heads.filter(({ kind, name, title }) => heads.filter((other) => other.name === name || (other.kind === kind && other.title === title)).length === 1);
      const pairs = lone.flatMap((one) => lone.flatMap((other) => (one.kind === other.kind && one.name < other.name ? [[one, other] as const] : [])));
      if (pairs.length === 0) return;
      const [one, other] = draw.pick(pairs);
      const found = compared(textOf(blocks), textOf(swappedNames(blocks, one.name, other.name)));
      expect(found.found.map(({ change }) => change.sort)).toEqual(['renamed', 'renamed']);
      expect(found.follows).toEqual([]);
      expect(found.found.flatMap(({ change }) => change.effects).every(({ total, inAll }) => total.isZero() && inAll.isZero())).toBe(true);
      swapped++;
    }), runs(1108, 120));
    expect(swapped).toBeGreaterThan(20);
  });

  test('one change alone makes the whole difference in all, by weighing the text with it', PATIENT, () => {
    let tried = 0;
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const after = edited(text, draw);
      const found = changed(text, after);
      if (found.changes.length !== 1) return;
      const [{ alone, last } = { alone: 'none', last: 'none' }] = found.changes;
      for (const turned of [alone, last]) {
        if (typeof turned === 'string') continue;
        found.options.forEach((pair, i) => {
          const turn = turned.options[i];
          if (pair.before === undefined || pair.after === undefined || turn === undefined) return;
          tried++;
          expect([turn.inAll.after.minus(turn.inAll.before).toFixed(), turn.days.after.toFixed()]).toEqual([pair.after.inAll.minus(pair.before.inAll).toFixed(), pair.after.days.toFixed()]);
        });
      }
    }), runs(1106, 100));
    expect(tried).toBeGreaterThan(30);
  });

  test('alone one way is the last one the other way, with its sign turned', PATIENT, () => {
    let tried = 0;
    fc.assert(fc.property(randomEstimate, draws, (text, draw) => {
      const after = edited(text, draw);
      const [there, back] = [changed(text, after), changed(after, text)];
      const key = ({ sort, before, after: now, link, facts }: Changes['changes'][number], turned: boolean) => JSON.stringify([turned ? turnedSort[sort] : sort, (turned ? now : before)?.at.start, (turned ? now : before)?.title, (turned ? now : before)?.name, (turned ? before : now)?.title, (turned ? before : now)?.name, link?.lead, link?.by.title, facts.length]);
      const others = new Map(back.changes.map((one) => [key(one, true), one]));
      for (const one of there.changes) {
        const other = others.get(key(one, false));
        if (other === undefined || others.size !== back.changes.length) continue;
        tried++;
        expect(turnSaid(one.alone, there, false)).toEqual(turnSaid(other.last, back, true));
        expect(turnSaid(one.last, there, false)).toEqual(turnSaid(other.alone, back, true));
      }
    }), runs(1107, 25));
    expect(tried).toBeGreaterThan(20);
  });
});

const turnedSort = { came: 'went', went: 'came', moved: 'moved', renamed: 'renamed', elsewhere: 'elsewhere' } as const;

function optionNames({ weighed }: Compared, which: 'before' | 'after'): string[] {
  return weighed.map((pair) => (pair[which] ?? pair[which === 'after' ? 'before' : 'after'] as Weighed).option.name);
}

/** Rows by words, with their amounts by option. */
function told(found: Compared): ReturnType<typeof said> {
  return said(found, optionNames(found, 'after'), 1);
}

function mirrored(found: Compared): ReturnType<typeof said> {
  return said(found, optionNames(found, 'before'), -1);
}

function said(found: Compared, names: readonly string[], sign: 1 | -1): { readonly changes: readonly object[]; readonly follows: readonly string[] } {
  const amounts = (effects: readonly Effect[]): Readonly<Record<string, string>> => Object.fromEntries(effects.flatMap(({ total, inAll }, i) => (total.isZero() && inAll.isZero() ? [] : [[names[i] ?? '', `${total.times(sign).toFixed()} ${inAll.times(sign).toFixed()}`] as const]))
    // Each version has its options in its own order.
    .sort(([a], [b]) => (a < b ? -1 : 1)));
  return {
    changes: found.found.map(({ draft, change }) => ({ key: draft.key, sort: sign === 1 ? change.sort : turnedSort[change.sort], amounts: amounts(change.effects) })),
    follows: found.follows.map(({ sort, of, effects }) => ({ sort, from: sign === 1 ? of?.before : of?.after, to: sign === 1 ? of?.after : of?.before, amounts: amounts(effects) })).map((one) => JSON.stringify(one)).sort(),
  };
}

function turnSaid(turned: Turned, { options }: Changes, turn: boolean): unknown {
  if (typeof turned === 'string') return turned;
  const name = (i: number | undefined) => (i === undefined ? undefined : (options[i]?.[turn ? 'before' : 'after'] ?? options[i]?.[turn ? 'after' : 'before'])?.name);
  const ends = <T>({ before, after }: { readonly before: T; readonly after: T }): readonly T[] => (turn ? [after, before] : [before, after]);
  return {
    options: Object.fromEntries<unknown>(turned.options.flatMap((one, i): [string, unknown][] => (one === undefined ? [] : [[name(i) ?? '', [ends(one.days).map(String), ends(one.ready), ends(one.inAll).map(String)]]]))),
    pick: ends(turned.pick).map(name),
  };
}
