import { expect } from 'vitest';
import { changed } from '../../changes/both.js';

/** A shop and an estimate for lines to stand below. */
export const HEAD = `steelyard 1
shop "Bay"
  currency USD
  rate bench 100.00 usual
  rate fine 150.00
estimate "E-1"
`;

type Found = ReturnType<typeof changed>['changes'];

/** Each change in one line: what became of it, by which line, and what it says now. */
export function told(changes: Found): readonly string[] {
  return changes.map(({ sort, before, after, link, facts }) => [
    `${sort} ${[before?.title, after?.title].filter((title) => title !== undefined).join(' > ')}${link === undefined ? '' : ` by ${link.by.title}`}`,
    ...facts.map(({ fact, before: was, after: is }) => `${fact} ${was ?? '-'} > ${is ?? '-'}`),
  ].join('; ')).sort();
}

/** What became of the lines below the head, by both ways round: the other way round must be the mirror. */
export function sorts(before: string, after: string, head = HEAD): readonly string[] {
  const there = told(changed(head + before, head + after).changes);
  const turned = { came: 'went', went: 'came' } as const;
  const mirror = told(changed(head + after, head + before).changes.map((one) => ({
    ...one, sort: turned[one.sort as 'came'] ?? one.sort, before: one.after, after: one.before, facts: one.facts.map(({ fact, before: was, after: is }) => ({ fact, before: is, after: was })),
  })));
  expect(mirror).toEqual(there);
  return there;
}

/** An option with these lines below it. */
export const option = (...lines: readonly string[]) => `option a "A"\n${lines.map((line) => `  ${line}\n`).join('')}`;
