// Run by itself, in a process of its own, so that the time of the processor is its own: prints as JSON which of the
// expressions given as arguments, or else of the whole source, take too long, and on which text.
import { expressionsOfSource, hardTexts, type Found } from './expressions.js';

/** No expression may take longer on any text here, in milliseconds of the processor. */
const MOST = 50;
/** From short to long: what grows with a power, or doubles with each character, shows early and is not waited for. */
const LENGTHS = [16, 20, 24, 28, 32, 40, 60, 120, 240, 500, 1_000, 3_000, 10_000];
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

/** The first text that takes too long, twice: the first time a text is met, other work may fall into it. */
function tooSlow({ where, expression }: Found): string | undefined {
  const isSlow = (text: string): boolean => timeOf(expression, text) > MOST && timeOf(expression, text) > MOST;
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
  for (const [i, text] of [...hardTexts(expression, LONGEST)].entries()) if (wanted.has(i) && isSlow(text)) return says(text);
  return undefined;
}

const given = process.argv.slice(2);
const all = given.length > 0 ? given.map((source): Found => ({ where: 'given', expression: new RegExp(source, 'u') })) : [...new Map(expressionsOfSource().map((one) => [String(one.expression), one])).values()];
console.log(JSON.stringify({ tried: all.length, slow: all.flatMap((one) => tooSlow(one) ?? []) }));
