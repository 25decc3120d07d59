import { parse, type Statement, type Token } from '../../src/language/index.js';
import type { Input } from './ebnf.js';

/** Characters, for the grammar of one piece of a line. */
export function characters(text: string): Input {
  const fits = (pattern: RegExp, at: number) => (at < text.length && pattern.test(text[at] as string) ? at + 1 : undefined);
  return {
    length: text.length,
    terminal: (wanted, at) => (text.startsWith(wanted, at) ? at + wanted.length : undefined),
    name: () => undefined,
    special(said, at) {
      if (said.startsWith('one of the letters a')) return fits(/[a-z]/, at);
      if (said.startsWith('one of the letters A')) return fits(/[A-Z]/, at);
      if (said.startsWith('one of the digits')) return fits(/[0-9]/, at);
      if (said.startsWith('any character but a quote')) return fits(/[^"\\\n]/, at);
      if (said.startsWith('any character but a line end')) return fits(/[^\n]/, at);
      throw new Error(`characters know nothing of: ${said}`);
    },
  };
}

type Step = Token | 'line end' | 'indent' | 'dedent';

/** The tokens of a file with its line ends and steps of indentation, for the grammar of lines. */
export function lines(text: string): Input {
  const steps: Step[] = [];
  const walk = ({ tokens, children }: Statement) => {
    steps.push(...tokens, 'line end');
    if (children.length === 0) return;
    steps.push('indent');
    children.forEach(walk);
    steps.push('dedent');
  };
  parse('x.yard', text).blocks.forEach((block) => block.statements.forEach(walk));

  const token = (at: number) => (typeof steps[at] === 'object' ? steps[at] : undefined);
  const step = (wanted: Step, at: number) => (steps[at] === wanted ? [at + 1] : []);
  const ofKind = (kind: Token['kind'], at: number) => (token(at)?.kind === kind ? [at + 1] : []);
  const matching = (kind: Token['kind'], pattern: RegExp, at: number) => (pattern.test(token(at)?.text ?? '') ? ofKind(kind, at) : []);
  return {
    length: steps.length,
    terminal: (wanted, at) => (token(at)?.text === wanted && token(at)?.kind !== 'text' ? at + 1 : undefined),
    name(name, at) {
      switch (name) {
        case 'word':
        case 'number':
        case 'date':
        case 'mixed':
        case 'text': return ofKind(name, at);
        case 'own name': return matching('word', /[^-]$/, at);
        case 'day': return matching('date', /^.{10}$/, at);
        case 'currency': return matching('word', /^[A-Z]{3}$/, at);
        case 'end of line': return step('line end', at);
        case 'indent':
        case 'dedent': return step(name, at);
        default: return undefined;
      }
    },
    special: (said) => {
      throw new Error(`lines know nothing of: ${said}`);
    },
  };
}
