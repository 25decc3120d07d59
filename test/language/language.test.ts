import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { limits, parse, print, reparse, statementsOf, type Tree } from '../../src/language/index.js';
import { anyText, apply, edit, mutated, noise, placed } from './noise.js';
import { dump } from './tree.js';

describe('a tree is the text, whatever the text', () => {
  test('printing what was parsed gives the text back', () => {
    fc.assert(fc.property(anyText, (text) => print(parse('a.yard', text)) === text), { numRuns: 200 });
  });

  test('blocks start where the tree says, and every part lies within its block', () => {
    fc.assert(fc.property(anyText, (text) => {
      const tree = parse('a.yard', text);
      const blocksFit = tree.blocks.every((block, i) => text.startsWith(block.text, tree.starts[i]));
      const statementsFit = [...statementsOf(tree)].every(({ block, tokens, comment }) => {
        const parts = [...tokens, ...(comment === undefined ? [] : [comment])];
        return tokens.length > 0 && parts.every(({ start, end }, i) => (parts[i - 1]?.end ?? 0) <= start && start < end && end <= block.text.length);
      });
      const problemsFit = tree.blocks.flatMap((block) => block.problems).every(({ at }) => at.start <= at.end && at.end <= at.block.text.length);
      expect({ blocksFit, statementsFit, problemsFit }).toEqual({ blocksFit: true, statementsFit: true, problemsFit: true });
    }), { numRuns: 150 });
  });

  test('only marks, white space and comments lie between tokens', () => {
    fc.assert(fc.property(fc.oneof(noise, mutated), (text) => {
      const tree = parse('a.yard', text);
      for (const block of tree.blocks) {
        const units = block.text.split('');
        for (const statement of statementsOf({ ...tree, blocks: [block] })) for (const { start, end } of statement.tokens) units.fill(' ', start, end);
        for (const { start, end } of block.comments) units.fill(' ', start, end);
        // What is left is white space, or lines that were left out with a message.
        if (block.problems.length === 0) expect(units.join('').trim()).toBe('');
      }
    }), { numRuns: 150 });
  });
});

describe('parsing again after an edit', () => {
  const cases = fc.tuple(anyText, fc.array(edit, { minLength: 1, maxLength: 3 }));

  test('gives what parsing anew gives', () => {
    fc.assert(fc.property(cases, ([text, edits]) => {
      let tree = parse('a.yard', text);
      for (const one of edits) {
        tree = reparse(tree, apply(tree.text, one));
        expect(dump(tree)).toEqual(dump(parse('a.yard', tree.text)));
      }
    }), { numRuns: 120 });
  });

  test('between two unlike texts too', () => {
    fc.assert(fc.property(anyText, anyText, (a, b) => {
      expect(dump(reparse(parse('a.yard', a), b))).toEqual(dump(parse('a.yard', b)));
    }), { numRuns: 100 });
  });

  test('keeps every block that the edit does not touch', () => {
    fc.assert(fc.property(mutated, edit, (text, one) => {
      const before = parse('a.yard', text);
      const { from, to } = placed(text, one);
      const after = new Set(reparse(before, apply(text, one)).blocks);
      const untouched = before.blocks.filter((block, i) => {
        const start = before.starts[i] as number;
        return start + block.text.length < from || (start > to && i > 0);
      });
      expect(untouched.filter((block) => !after.has(block))).toEqual([]);
    }), { numRuns: 120 });
  });

  test('the same text is the same tree', () => {
    const tree = parse('a.yard', 'steelyard 1\n');
    expect(reparse(tree, 'steelyard 1\n')).toBe(tree);
  });
});

describe('comments', () => {
  test('are all found, behind lines and on lines of their own', () => {
    fc.assert(fc.property(fc.oneof(noise, mutated), (text) => {
      fc.pre(!/[“”„‟«»‘‹＂]/.test(text) && text.split('\n').every((line) => line.length <= limits.lineLength));
      const tree = parse('a.yard', text);
      expect(commentsOf(tree)).toEqual(commentsByHand(text));
    }), { numRuns: 300 });
  });
});

function commentsOf(tree: Tree): readonly number[] {
  return tree.blocks.flatMap((block, i) => block.comments.map(({ start }) => (tree.starts[i] as number) + start));
}

/** A # outside a title starts a comment; the plainest scanner that knows titles and \" in them. */
function commentsByHand(text: string): readonly number[] {
  const found: number[] = [];
  let inTitle = false;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (character === '\n') inTitle = false;
    else if (inTitle && character === '\\' && text[at + 1] !== '\n' && !(text[at + 1] === '\r' && text[at + 2] === '\n')) at++;
    else if (character === '"') inTitle = !inTitle;
    else if (character === '#' && !inTitle) {
      found.push(at);
      const end = text.indexOf('\n', at);
      at = end < 0 ? text.length : end - 1;
    }
  }
  return found;
}

describe('a big file is parsed at once', () => {
  const megabyte = (text: string) => text.repeat(Math.ceil(1_000_000 / text.length));
  /** Nothing but faults: each makes a message, so less of it is enough. */
  const faults = (text: string) => text.repeat(Math.ceil(150_000 / text.length));
  const cases: Readonly<Record<string, () => string>> = {
    'one word': () => megabyte('x'),
    'digits and commas': () => megabyte('1,'),
    'spaces': () => megabyte(' '),
    'quotes': () => megabyte('"'),
    'good lines': () => megabyte('part pump "Coolant pump, with its seal, as sold by the maker" 2 at 64.30 new arrives 2 d # by hand\n'),
    'empty lines': () => faults('\n'),
    'comments': () => faults('#\n'),
    'open titles': () => faults('part pump "Coolant pump 64.30 new\n'),
    'invisible characters': () => faults('note "Coolant\u200b pump at last"\n'),
    'look-alikes': () => faults('n\u043ete "Coolant pump, at last"\n'),
    'a staircase': () => Array.from({ length: 550 }, (_, i) => `${' '.repeat(i)}x`).join('\n'),
    'tabs against spaces': () => `a\n${faults('  coolant\n\tpump\n')}`,
    'one block of facts': () => `shop "S"\n${faults('  rate bench 100.00 usual\n')}`,
  };
  test.each(Object.keys(cases))('%s', (name) => {
    const text = (cases[name] as () => string)();
    const started = process.cpuUsage();
    const tree = parse('a.yard', text);
    const took = process.cpuUsage(started);
    expect(print(tree) === text).toBe(true);
    // Far more than it takes; it catches what grows faster than the file.
    expect((took.user + took.system) / 1000).toBeLessThan(1000);
  });
});
