import { has, scopesAt, type Tokenize } from './tokenize.js';

/**
 * A fixture is source with lines of carets: each caret names the scope of the character above it, and `!scope` says
 * that it must not have it. Several such lines may stand under one line of source.
 */
const assertion = /^( *)(\^+) +(!?)([a-z][\w.-]*)$/;

/** What a fixture gets wrong, one line each; empty where all holds. */
export function failures(fixture: string, tokenize: Tokenize): readonly string[] {
  const lines = fixture.split('\n');
  const source = lines.filter((line) => !assertion.test(line));
  const pieces = tokenize(source.join('\n'));
  const out: string[] = [];
  let at = -1;
  for (const line of lines) {
    const found = assertion.exec(line);
    if (found === null) {
      at++;
      continue;
    }
    const [, before = '', carets = '', not = '', wanted = ''] = found;
    for (let column = before.length; column < before.length + carets.length; column++) {
      const scopes = scopesAt(pieces[at] ?? [], column);
      if (has(scopes, wanted) === (not === '!')) {
        out.push(`${source[at] ?? ''}\n${' '.repeat(column)}^ ${not}${wanted}, but has ${scopes.join(' ') || 'nothing'}`);
        break;
      }
    }
  }
  return out;
}
