import { beforeAll, describe, expect, test } from 'vitest';
import { parse, statementsOf, type Statement } from '../../src/language/index.js';
import { exampleAt, placesOf } from '../../src/tools/places.js';
import { allKinds, units, type Field } from '../../src/vocabulary/index.js';
import { samples } from './samples.js';
import { has, loadTokenizer, scopesAt, type Tokenize } from './tokenize.js';

let tokenize: Tokenize;
const examples = allKinds.flatMap((kind) => placesOf(kind).map((place) => exampleAt(kind, place)));

beforeAll(async () => {
  tokenize = await loadTokenizer();
});

/** Expects a scope at one column of a line. */
function expectAt(line: string, column: number, wanted: string): void {
  expect(has(scopesAt(tokenize(line)[0] ?? [], column), wanted), `${wanted} at ${column} of: ${line}`).toBe(true);
}

describe('every word of the vocabulary', () => {
  const cases = allKinds.flatMap((kind) => placesOf(kind).map((place) => ({ kind, indent: '  '.repeat(place.length), where: [...place, kind].map(({ word }) => word).join(' > ') })));

  test.each(cases)('$where', ({ kind, indent }) => {
    const head = `${indent}${kind.word}${kind.name === 'none' ? '' : ' zz'}${kind.title === 'none' ? '' : ' "T"'} `;
    expectAt(head, indent.length, 'keyword');
    for (const field of Object.values(kind.fields) as Field[]) {
      const lead = field.bare ? '' : `${field.lead ?? ''} `;
      if (lead !== '') {
        expectAt(`${head}${lead}`, head.length, 'keyword.other');
        expectAt(`  ${lead}`, 2, 'keyword.other');
      }
      for (const word of [...Object.keys(field.value.words ?? {}), ...Object.keys(field.value.builtIn ?? {})]) {
        expectAt(`${head}${lead}${word}`, head.length + lead.length, 'constant.language');
        if (lead !== '') expectAt(`  ${lead}${word}`, 2 + lead.length, 'constant.language');
      }
    }
  });

  test('units', () => {
    for (const { word } of units) expectAt(`part "T" 3 ${word} at 4`, 11, 'keyword.other.unit');
  });
});

describe('agreement with the reader', () => {
  test('samples and examples: first words, figures, dates, titles and comments have their colours', () => {
    for (const text of [...samples.map(({ text }) => text), ...examples]) {
      const lines = tokenize(text);
      for (const { statement, offset, lineAt } of placed(text)) {
        const scopes = (start: number) => scopesAt(lines[lineAt(start)] ?? [], start - offset(start));
        statement.tokens.forEach((token, i) => {
          const own = scopes(token.start);
          const where = `${token.text} in: ${text.split('\n')[lineAt(token.start)] ?? ''}`;
          if (i === 0) expect(has(own, 'keyword'), where).toBe(true);
          if (token.kind === 'number') expect(has(own, 'constant.numeric'), where).toBe(true);
          if (token.kind === 'date') expect(has(own, 'constant.numeric'), where).toBe(true);
          if (token.kind === 'text') expect(has(own, 'string.quoted.double'), where).toBe(true);
          if (token.kind === 'word') expect(own.length, `no colour: ${where}`).toBeGreaterThan(1);
          expect(has(own, 'invalid'), where).toBe(false);
        });
        const comment = statement.comment;
        if (comment !== undefined) expect(has(scopes(comment.start), 'comment.line.number-sign')).toBe(true);
      }
      text.split('\n').forEach((line, at) => {
        const hash = /^\s*#/.exec(line);
        if (hash !== null) expect(has(scopesAt(lines[at] ?? [], hash[0].length - 1), 'comment'), line).toBe(true);
      });
    }
  });
});

/** Every statement of a file, with its tokens moved to file offsets. */
function placed(text: string) {
  const tree = parse('sample.yard', text);
  const lineStarts = [0, ...[...text.matchAll(/\n/g)].map((found) => found.index + 1)];
  const lineAt = (at: number) => lineStarts.findLastIndex((start) => start <= at);
  const offset = (at: number) => lineStarts[lineAt(at)] as number;
  return [...statementsOf(tree)].map((statement) => {
    const base = tree.starts[tree.blocks.indexOf(statement.block)] as number;
    const tokens = statement.tokens.map((token) => ({ ...token, start: token.start + base, end: token.end + base }));
    const comment = statement.comment === undefined ? undefined : { start: statement.comment.start + base };
    return { statement: { tokens, comment } satisfies { tokens: Statement['tokens']; comment: unknown }, offset, lineAt };
  });
}
