import { describe, expect, test } from 'vitest';
import { Seen } from '../../src/editor/seen.js';

/** A disk that answers when it is told to. */
function disk() {
  const asked: { readonly key: string; readonly answer: (there: boolean) => void; readonly fail: (error: Error) => void }[] = [];
  const changed: string[] = [];
  const seen = new Seen((key) => new Promise((answer, fail) => void asked.push({ key, answer, fail })), (key) => void changed.push(key));
  const settle = () => new Promise((resolve) => setTimeout(resolve));
  const answer = async (i: number, there: boolean) => {
    asked[i]?.answer(there);
    await settle();
  };
  return { asked, changed, seen, answer, settle };
}

describe('whether a picture is there', () => {
  test('is not waited for: it counts as there, is looked for once, and is told when it is not', async () => {
    const { asked, changed, seen, answer } = disk();
    expect([seen.isThere('a'), seen.isThere('a')]).toEqual([true, true]);
    expect(asked.map(({ key }) => key)).toEqual(['a']);
    await answer(0, false);
    expect(changed).toEqual(['a']);
    expect(seen.isThere('a')).toBe(false);
    expect(asked).toHaveLength(1);
  });

  test('is no news where it is', async () => {
    const { changed, seen, answer } = disk();
    seen.isThere('a');
    await answer(0, true);
    expect(changed).toEqual([]);
    expect(seen.isThere('a')).toBe(true);
  });

  test('is looked for again when the disk says that something happened, and stays what it was until then', async () => {
    const { changed, seen, answer } = disk();
    seen.isThere('a');
    await answer(0, false);
    void seen.again('a');
    expect(seen.isThere('a')).toBe(false);
    await answer(1, true);
    expect(seen.isThere('a')).toBe(true);
    expect(changed).toEqual(['a', 'a']);
  });

  test('is what the last look says, whichever ends first', async () => {
    const { changed, seen, answer } = disk();
    seen.isThere('a');
    void seen.again('a');
    await answer(1, true);
    await answer(0, false);
    expect([seen.isThere('a'), changed]).toEqual([true, []]);
  });

  test('that can’t be looked for is not there', async () => {
    const { asked, changed, seen, settle } = disk();
    seen.isThere('a');
    asked[0]?.fail(new Error('no permission'));
    await settle();
    expect([seen.isThere('a'), changed]).toEqual([false, ['a']]);
  });

  test('of a line that is gone is not told, and is looked for anew when the line comes back', async () => {
    const { asked, changed, seen, answer } = disk();
    seen.isThere('a');
    seen.isThere('b');
    seen.keepOnly(new Set(['b']));
    await answer(0, false);
    await answer(1, false);
    expect(changed).toEqual(['b']);
    seen.isThere('a');
    expect(asked.map(({ key }) => key)).toEqual(['a', 'b', 'a']);
  });

  test('can be waited for by who looks at an estimate once', async () => {
    const { seen, answer } = disk();
    seen.isThere('a');
    let known = false;
    const waiting = seen.whenKnown(['a', 'b'], () => void (known = true));
    await answer(0, true);
    expect(known).toBe(false);
    await answer(1, false);
    await waiting;
    expect([seen.isThere('a'), seen.isThere('b')]).toEqual([true, false]);
  });

  test('is looked for once more where it was forgotten while somebody waited for it', async () => {
    const { asked, seen, answer } = disk();
    const told: boolean[] = [];
    const waiting = seen.whenKnown(['a'], () => void told.push(seen.isThere('a')));
    seen.keepOnly(new Set());
    await answer(0, false);
    expect(told).toEqual([]);
    await answer(1, false);
    await waiting;
    expect(told).toEqual([false]);
    expect(asked).toHaveLength(2);
  });
});
