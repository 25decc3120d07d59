import { describe, expect, test } from 'vitest';
import { expressionsIn, expressionsOfSource, hardTexts, madeExpressions, type Found } from './expressions.js';

/** No expression may take longer on any text here, in milliseconds of the processor. */
const MOST = 50;
/** From short to long: what grows with a power shows early and is not waited for. */
const LENGTHS = [24, 120, 1_000, 10_000];
const LONGEST = 100_000;
/** So many of the texts that were slowest are tried at the longest. */
const SLOWEST = 8;

function timeOf(expression: RegExp, text: string): number {
  const before = process.cpuUsage();
  if (expression.global) text.replace(expression, '');
  else expression.exec(text);
  const { user, system } = process.cpuUsage(before);
  expression.lastIndex = 0;
  return (user + system) / 1_000;
}

/** What takes too long; the machine does other work too, so it has three tries. */
function tooSlow({ where, expression }: Found): string | undefined {
  const isSlow = (text: string): boolean => [1, 2, 3].every(() => timeOf(expression, text) > MOST);
  const says = (text: string) => `${where} ${String(expression)}: over ${MOST} ms for ${text.length} characters, ${JSON.stringify(text.slice(0, 24))}…`;
  let slowest: { readonly i: number; readonly time: number }[] = [];
  for (const length of LENGTHS) {
    slowest = [];
    for (const [i, text] of [...hardTexts(expression, length)].entries()) {
      const time = timeOf(expression, text);
      if (time > MOST && isSlow(text)) return says(text);
      slowest.push({ i, time });
    }
  }
  const wanted = new Set(slowest.sort((a, b) => b.time - a.time).slice(0, SLOWEST).map(({ i }) => i));
  for (const [i, text] of [...hardTexts(expression, LONGEST)].entries()) {
    if (wanted.has(i) && timeOf(expression, text) > MOST && isSlow(text)) return says(text);
  }
  return undefined;
}

describe('regular expressions', () => {
  const all = expressionsOfSource();

  test('are all found', () => {
    expect(all.length).toBeGreaterThan(80);
    expect(expressionsIn('a.ts', 'const a = 4 / 2 / 1; // /no/\nconst b = "/no/" + `${/yes+/gi.source} /no/`;\nif (/[/\\]]x/.test(b)) f(/z/u);').map(({ where, expression }) => `${where} ${String(expression)}`)).toEqual(['a.ts:2 /yes+/gi', 'a.ts:3 /[/\\]]x/', 'a.ts:3 /z/u']);
  });

  test('that are put together when the program runs are these, of words of the product alone', () => {
    // The classes of characters that can't be seen; and the word of a kind.
    expect(madeExpressions()).toEqual(['report/json-text.ts', 'report/plain.ts', 'service/complete/starter.ts']);
  });

  test('that are bad are noticed', () => {
    for (const bad of [/^(a+)+$/, /(x|x)*y/, /^(?:[\r\n]+)*z/, /(.*),(.*),(.*)!$/, /^\s+|\s+$/g, /a*b/]) expect(tooSlow({ where: 'here', expression: bad }), String(bad)).toBeDefined();
    expect(tooSlow({ where: 'here', expression: /^[a-z]+(-[a-z]+)*$/ })).toBeUndefined();
  });

  const distinct = [...new Map(all.map((one) => [String(one.expression), one])).values()];
  test('none takes long, whatever it is given', { timeout: 300_000 }, () => {
    expect(distinct.flatMap((one) => tooSlow(one) ?? [])).toEqual([]);
  });
});
