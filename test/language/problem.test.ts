import { describe, expect, test } from 'vitest';
import { parse, problem, sentence, spanOfStatement, statementsOf, type Rule } from '../../src/language/index.js';

describe('a message', () => {
  const rule: Rule<string> = {
    code: 'odd-word', family: 'shape', severity: 'warning', title: 'An odd word', example: '',
    message: (word) => ({ what: `“${word}” is odd.`, why: '', instead: 'Choose another.' }),
    fix: (word, at) => ({ title: 'Take it out', at, text: word.slice(1) }),
  };

  test('is one sentence behind the other; a part that says nothing leaves no gap', () => {
    expect(sentence({ what: 'It is odd.', why: 'Nobody reads it.', instead: 'Choose another.' })).toBe('It is odd. Nobody reads it. Choose another.');
    expect(sentence(rule.message('zap'))).toBe('“zap” is odd. Choose another.');
    expect(sentence({ what: '', why: '', instead: '' })).toBe('');
  });

  test('is made with its place, its mending and what it is about', () => {
    const [statement] = [...statementsOf(parse('a.yard', 'zap\n'))];
    const at = spanOfStatement(statement as NonNullable<typeof statement>);
    const related = { at, says: 'The first one' };
    expect(problem(rule, at, 'zap', related)).toEqual({ code: 'odd-word', severity: 'warning', at, message: rule.message('zap'), fix: { title: 'Take it out', at, text: 'ap' }, related });
    const { code, family, severity, title, message, example } = rule;
    expect(problem({ code, family, severity, title, message, example }, at, 'zap')).toMatchObject({ fix: undefined, related: undefined });
  });
});
