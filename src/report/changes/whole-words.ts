import type { Changes, OptionPair, Pick, SideState } from '../../weigh/changes/index.js';
import { moneyText } from '../numbers.js';
import { findingsSpeak } from '../ruled-out.js';
import { laterWords, nameOf } from './change-words.js';

/** What must be known before any figure: a side that can't be weighed, other money, figures that may be too low. */
export function warnings(changes: Changes): string[] {
  const { before, after, comparable, options } = changes;
  const unfinished = (side: 'before' | 'after') => options.flatMap((pair) => (pair[side]?.complete === false ? [pair[side].title] : []));
  return [
    ...[before, after].flatMap(troubleSentence),
    ...(comparable ? [] : ['The two versions count in different money, so no effect on the totals is worked out.']),
    ...(['before', 'after'] as const).flatMap((side) => {
      const titles = unfinished(side);
      return titles.length === 0 ? [] : [`Incomplete in ${changes[side].name}, since lines that they rest on can’t be read or priced: ${titles.join(', ')}. What changed in them may move more than is told here.`];
    }),
  ];
}

function troubleSentence({ name, trouble }: SideState): string[] {
  switch (trouble) {
    case undefined: return [];
    case 'missing': return [`${name}: there is no such file, so all of the other version counts as new or gone.`];
    case 'unreadable': return [`${name}: no option of it can be read, so it has no total to compare.`];
    case 'no-option': return [`${name}: it has no option yet, so it has no total to compare.`];
  }
}

/** Which option costs least, whether that has changed, and what was found that speaks against others. */
export function pickSentence(changes: Changes): string {
  return [choiceSentence(changes), ...ruledOutSentences(changes)].join(' ');
}

/** Beside the choice: an option that is ruled out may cost less, and one that was may be back. */
function ruledOutSentences(changes: Changes): string[] {
  return changes.options.flatMap(({ before, after }, i) => {
    if (after === undefined) return [];
    const title = titleOf(i, 'after', changes);
    if (after.ruledOut.length === 0) return before === undefined || before.ruledOut.length === 0 ? [] : [`${title} is no longer ruled out.`];
    const since = before !== undefined && before.ruledOut.length > 0 ? 'still' : 'now';
    return [`${title} is ${since} ruled out: ${findingsSpeak(after.ruledOut)} against it.`];
  });
}

function choiceSentence(changes: Changes): string {
  const { before: { pick: before }, after: { pick: after } } = changes;
  if (after === undefined) return before === undefined ? 'No option of either version can be weighed.' : `No option of the new version can be weighed; before, ${titleOf(before.option, 'before', changes)} cost least.`;
  const now = `${titleOf(after.option, 'after', changes)} ${before?.option === after.option ? 'still costs least' : 'now costs least'}${byWords(after, 'after', changes)}`;
  if (before === undefined) return `${now}.`;
  if (before.option === after.option) return before.less === undefined || after.less === undefined || before.less.eq(after.less) ? `${now}.` : `${now}; before,${before.less.isZero() ? byWords(before, 'before', changes).slice(1) : ` by ${moneyText(before.less, changes.money)}`}.`;
  return `${now}; before, it was ${titleOf(before.option, 'before', changes)}${before.less === undefined ? '' : `, by ${moneyText(before.less, changes.money)}`}.`;
}

function byWords({ less, next }: Pick, side: 'before' | 'after', changes: Changes): string {
  if (less === undefined || next === undefined) return '';
  if (less.isZero()) return `, to the cent as much as ${titleOf(next, side, changes)}`;
  return `, ${moneyText(less, changes.money)} less than ${titleOf(next, side, changes)}`;
}

/** The title of an option, and its name where another one has that title too. */
function titleOf(index: number, side: 'before' | 'after', changes: Changes): string {
  const option = changes.options[index]?.[side];
  if (option === undefined) return nameOf(index, changes);
  const isShared = changes.options.some((pair, i) => i !== index && pair[side]?.title === option.title);
  return isShared ? `${option.title} (${option.name})` : option.title;
}

/** Which options are ready on another day. */
export function readySentence(changes: Changes): string {
  const both = changes.options.filter((pair): pair is OptionPair & { readonly before: object; readonly after: object } => pair.before !== undefined && pair.after !== undefined);
  if (both.length === 0) return '';
  const moved = both.flatMap(({ before, after }) => {
    const days = after.days.minus(before.days).toNumber();
    if (days === 0 && before.ready === after.ready) return [];
    const dates = before.ready === undefined || after.ready === undefined ? '' : `${before.ready} → ${after.ready}`;
    const words = days === 0 ? '' : laterWords(days);
    return [`${after.name} ${words}${dates === '' ? '' : words === '' ? dates : ` (${dates})`}`];
  });
  if (moved.length > 0) return `Ready on another day: ${moved.join(', ')}.`;
  return both.some(({ after }) => after.ready !== undefined) ? 'Every option is ready on the day it was.' : 'Every option takes as many working days as before.';
}

/** What is said where not every change was tried one by one. */
export function beyondSentence({ changes, mostTried }: Changes): string {
  const count = changes.filter(({ alone }) => alone === 'beyond').length;
  if (count === 0) return '';
  return `What each change alone does to the day and the choice is tried for the ${mostTried} largest; ${count === 1 ? 'one more was' : `${count} more were`} not.`;
}

/** Nothing that an estimate is made of. */
export const NOTHING_CHANGED = 'Nothing changed. The order of lines, spacing and comments don’t count.';

export function isNothing({ changes, follows }: Changes): boolean {
  return changes.length === 0 && follows.length === 0;
}
