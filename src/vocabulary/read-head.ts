import type { Token } from '../language/index.js';
import type { Cursor } from './cursor.js';
import type { Field, Kind } from './kind.js';
import * as rules from './read-rules.js';
import { fieldLedBy, type Draft } from './read-slots.js';
import type { Name, Text } from './value.js';

/** The name that follows the kind's word, where there is one or must be. */
export function readName(cursor: Cursor, kind: Kind, draft: Draft, head: Token): Name | undefined {
  if (kind.name === 'none') return undefined;
  const token = cursor.peek();
  const second = cursor.peek(1);
  const isName = token?.kind === 'word' && (kind.name === 'required' || second?.kind === 'text' || fieldLedBy(cursor, kind) === undefined && !isBareWord(kind, token));
  if (token !== undefined && isName) {
    cursor.take();
    if (token.text.endsWith('-')) cursor.report(rules.badName, cursor.span(token), { written: token.text, plain: token.text.replace(/(?<!-)-+$/, '') });
    return { name: token.text, at: cursor.span(token) };
  }
  if (token?.kind === 'mixed' && second?.kind === 'text') {
    cursor.take();
    const plain = /^\d/.test(token.text) ? '' : token.text.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^[-0-9]+|(?<!-)-+$/g, '');
    cursor.report(rules.badName, cursor.span(token), { written: token.text, plain: plain === '' ? undefined : plain });
    draft.broken = true;
    return undefined;
  }
  if (kind.name === 'required' && !(token !== undefined && cursor.isSpoiled(token))) {
    cursor.report(rules.nameMissing, cursor.span(head), { kind: kind.word });
    draft.broken = true;
  }
  return undefined;
}

function isBareWord(kind: Kind, token: Token): boolean {
  return kind.bares.words.some((key) => (kind.fields[key] as Field).value.starts(token) && (kind.fields[key] as Field).value.words !== undefined);
}

/** The title in quotes, where there is one or must be. */
export function readTitle(cursor: Cursor, kind: Kind, draft: Draft, head: Token): Text | undefined {
  if (kind.title === 'none') return undefined;
  const token = cursor.peek();
  if (token?.kind === 'text') {
    cursor.take();
    return { text: token.text, at: cursor.span(token) };
  }
  if (!draft.broken && token !== undefined && token.kind !== 'mark' && cursor.peek(1)?.kind === 'text' && fieldLedBy(cursor, kind) === undefined) {
    cursor.report(rules.unknownWord, cursor.span(token), { written: token.text, kind: kind.word, can: ['the title in quotes'], meant: undefined });
    draft.broken = true;
    return undefined;
  }
  if (kind.title === 'required' && !draft.broken && !(token !== undefined && cursor.isSpoiled(token))) {
    cursor.report(rules.titleMissing, cursor.span(head), { kind: kind.word, says: kind.titleSays, named: kind.name !== 'none' });
    draft.broken = true;
  }
  return undefined;
}
