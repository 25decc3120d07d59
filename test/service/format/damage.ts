import fc from 'fast-check';
import { parse, type Statement, type Token } from '../../../src/language/index.js';
import { Draw } from '../../support/random-draw.js';
import { randomEstimate } from '../../support/random-estimate.js';

export interface Damaged {
  readonly before: string;
  readonly after: string;
}

/** A valid estimate, and the same one with its white space in disorder, with comments and blank lines put in. */
export const damaged: fc.Arbitrary<Damaged> = fc
  .tuple(randomEstimate, fc.noBias(fc.array(fc.nat({ max: 65_535 }), { maxLength: 900, size: 'max' })))
  .map(([before, numbers]) => ({ before, after: damage(before, new Draw(numbers)) }));

const GAPS = [' ', '  ', '\t', '   \t', '      '] as const;
const COMMENTS = ['# seen "twice"', '#', '## 1,000.00', '# part x "Y" 3 new  ', '#\tto do'] as const;

function damage(text: string, draw: Draw): string {
  const end = draw.chance(20) ? '\r\n' : '\n';
  const out: string[] = [];
  const write = (line: string) => out.push(`${line}${draw.chance(15) ? draw.pick(GAPS) : ''}`);
  for (const block of parse('u', text).blocks) {
    const unit = draw.pick(['  ', ' ', '\t', '    ', '       ']);
    const visit = (statement: Statement, depth: number): void => {
      if (draw.chance(8)) write('');
      if (draw.chance(8)) write(`${draw.chance(60) ? draw.pick(GAPS) : ''}${draw.pick(COMMENTS)}`);
      const words = statement.tokens.map((token, i) => gapBefore(token, statement.tokens[i - 1], draw) + block.text.slice(token.start, token.end)).join('');
      const own = statement.comment === undefined ? undefined : block.text.slice(statement.comment.start, statement.comment.end);
      const comment = own ?? (draw.chance(8) ? draw.pick(COMMENTS) : '');
      write(`${unit.repeat(depth)}${words}${comment === '' ? '' : `${draw.pick(['', ...GAPS])}${comment}`}`);
      for (const child of statement.children) visit(child, depth + 1);
    };
    for (const statement of block.statements) visit(statement, 0);
    for (const { start, end: stop } of block.comments) if (/^\s*$/.test(block.text.slice(block.text.lastIndexOf('\n', start) + 1, start))) write(block.text.slice(start, stop));
  }
  return `${draw.chance(10) ? '\ufeff' : ''}${out.join(end)}${draw.chance(80) ? end : ''}`;
}

/** White space that keeps the words of a line what they are; a comma needs none before it, a slash none at all. */
function gapBefore(token: Token, last: Token | undefined, draw: Draw): string {
  if (last === undefined) return '';
  if (token.text === '%' && token.kind === 'mark') return token.start === last.end ? '' : ' ';
  const mark = (one: Token) => one.kind === 'mark' && one.text !== '%';
  const loose = mark(token) || mark(last);
  // Figures on both sides of a comma would be one figure.
  return loose && !(last.text === ',' && token.kind !== 'word') && draw.chance(40) ? '' : draw.pick(GAPS);
}
