import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.js';
import { comparisonText } from '../../src/report/index.js';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { expectQuoted } from './quoted.js';

// samples/guide.md is typed here line by line. What its fences mean:
//   ```yard file NAME    a new file
//   ```yard add          lines at the end of the newest file, behind an empty line
//   ```yard was          lines that stand in the newest file once; ```yard now: what stands there instead.
//                        A name behind them is that of another file.
//   ```text check        lines that `steelyard check` prints for the newest file; so `weigh`, `explain FIGURE` and
//                        `quote OPTION`.
//                        Lines stand together in the output; a line … skips some.

const page = readFileSync(path.resolve(import.meta.dirname, '../../samples/guide.md'), 'utf8');

interface Fence {
  readonly step: string;
  readonly language: string;
  readonly verb: string;
  readonly argument: string;
  readonly body: string;
}

/** What was quoted, with the files as they stood at that moment. */
interface Saying extends Fence {
  readonly files: ReadonlyMap<string, string>;
}

const steps = page.split(/^(?=## )/m).slice(1).map((text) => ({ title: text.slice(3, text.indexOf('\n')), text }));

const fences = steps.flatMap(({ title, text }): Fence[] =>
  [...text.matchAll(/^```(\w+) (\w+) ?(.*)\n([^]*?)^```$/gm)].map(([, language = '', verb = '', argument = '', body = '']) => ({ step: title, language, verb, argument, body })));

function newest(files: ReadonlyMap<string, string>): string {
  return [...files.keys()].pop() ?? '';
}

/** Types the page; the text of each file after each fence. */
function typed(): Saying[] {
  let files: ReadonlyMap<string, string> = new Map<string, string>();
  let was = '';
  return fences.map((fence) => {
    const { language, verb, argument, body } = fence;
    const file = argument === '' ? newest(files) : argument;
    const text = files.get(file) ?? '';
    if (language === 'yard' && verb === 'file') files = new Map([...files, [argument, body]]);
    else if (verb === 'add') files = new Map([...files, [file, `${text}\n${body}`]]);
    else if (verb === 'was') was = body;
    else if (verb === 'now') {
      expect(text.split(was), `${fence.step}: the lines to change stand there once`).toHaveLength(2);
      files = new Map([...files, [file, text.replace(was, () => body)]]);
    } else if (language !== 'text') throw new Error(`A fence that means nothing: ${language} ${verb}`);
    return { ...fence, files };
  });
}

const known = typed();
const sayings = known.filter(({ language }) => language === 'text');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-guide-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const outputs = new Map<string, { readonly code: number; readonly out: string }>();

/** What the terminal tool prints for the files as they stand; kept, since several tests look at it. */
function printed(saying: Pick<Saying, 'files'>, verb: string, argument: string) {
  const key = JSON.stringify([verb, argument, ...saying.files]);
  const output = outputs.get(key) ?? print(saying, verb, argument);
  outputs.set(key, output);
  return output;
}

function print({ files }: Pick<Saying, 'files'>, verb: string, argument: string) {
  for (const [file, text] of files) writeFileSync(path.join(folder, file), text);
  const file = newest(files);
  let out = '';
  const args: Readonly<Record<string, readonly string[]>> = { explain: ['weigh', file, '--explain', argument], quote: ['quote', file, '--option', argument] };
  const code = run(args[verb] ?? [verb, file], '1.2.3', {
    cwd: folder, styled: false, stdin: () => '', out: (text) => void (out += text), err: () => undefined,
  });
  return { code, out };
}

function serviceOver({ files }: Pick<Saying, 'files'>) {
  return createLanguageService({
    read: (uri) => {
      const text = files.get(path.basename(uri));
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin('/guide', from, written),
  });
}

describe('the guide from an empty file', () => {
  test('has its steps, each with something to type or to read', () => {
    expect(steps.map(({ title }) => Number.parseInt(title, 10))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
    for (const { title } of steps) expect(fences.filter(({ step }) => step === title), title).not.toHaveLength(0);
    expect(sayings.map(({ verb }) => verb)).toEqual(['check', 'check', 'check', 'weigh', 'check', 'weigh', 'weigh', 'weigh', 'weigh', 'weigh', 'weigh', 'explain', 'quote', 'quote', 'check']);
  });

  test.each(sayings)('$step: $verb $argument says so in the terminal', (saying) => {
    expect(saying.body.trim()).not.toBe('');
    const { code, out } = printed(saying, saying.verb, saying.argument);
    expectQuoted(saying.body, out);
    expect(code).toBe(/  (error|warning)  /.test(saying.body) ? 1 : 0);
  });

  test.each(sayings)('$step: the service says the same as $verb', (saying) => {
    const service = serviceOver(saying);
    const uri = `/guide/${newest(saying.files)}`;
    if (saying.verb === 'check') {
      const found = [...service.allDiagnostics(uri).values()].flat();
      expect(found.map(({ code }) => `[${code}]`)).toEqual([...saying.body.matchAll(/\[[a-z-]+\]/g)].map(([code]) => code));
      for (const { message } of found) for (const words of [message.what, message.why, message.instead]) expect(saying.body).toContain(words);
    } else {
      expect(comparisonText(service.decision(uri), (text) => text)).toBe(printed(saying, 'weigh', '').out);
    }
  });

  test('every figure in its sentences is one that the tool shows at that step, or that was typed', () => {
    let checked = 0;
    for (const { title, text } of steps) {
      const prose = text.replace(/^```[^]*?^```$/gm, '');
      const last = known.filter(({ step }) => step === title).at(-1) as Saying;
      const shown = [...last.files.values(), printed(last, 'weigh', '').out, ...sayings.filter(({ step }) => step === title).map(({ body }) => body)].join('\n');
      for (const [figure] of prose.matchAll(/\d[\d,]*\.\d+/g)) {
        expect(shown, `${title}: ${figure}`).toMatch(new RegExp(`(?<![\\d,.])${figure.replaceAll('.', '\\.')}(?![\\d,.])`));
        checked++;
      }
      for (const [, command = ''] of prose.matchAll(/`steelyard ([^`]+)`/g)) expect(['check finch.yard', 'weigh finch.yard', 'weigh finch.yard --explain in-place.penalty', 'quote finch.yard --option in-place', 'changes finch.yard', 'quote finch.yard --supplement --since HEAD~1', 'closing', 'history']).toContain(command);
    }
    expect(checked).toBeGreaterThan(5);
  });

  test('what is typed stands alone: the whole of it, without a word left to mend', () => {
    const end = known.at(-1) as Saying;
    expect([...end.files.keys()]).toEqual(['shop.yard', 'finch.yard']);
    expect(printed(end, 'check', '')).toEqual({ code: 0, out: '1 file: no errors, no warnings\n' });
    expect(serviceOver(end).weighing('/guide/finch.yard').comparison.options.map(({ option }) => option.name)).toEqual(['in-place', 'on-table', 'as-it-stands']);
  });
});
