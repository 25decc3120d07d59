import { zero } from '../../vocabulary/index.js';
import { less } from './bill.js';
import type { Figures } from './figures-said.js';
import { depositSaid, isNothing, readyOn, readySaid, section, words } from './quote-sheet.js';
import { own, say, type Fact, type Said, type Section } from './sheet.js';
import type { Besides, DepositMoved } from './supplement-besides.js';
import type { Supplement } from './supplement.js';
import type { Digits } from './types.js';

/** What a supplement says beside its lines and its price: what comes back, when it is ready, the warranty; then and now. */

function beforeOf({ news }: Supplement): Besides | undefined {
  return news.kind === 'listed' ? news.before : undefined;
}

export function besideFacts(supplement: Supplement, figures: Figures): Fact[] {
  const { ready, warranty } = supplement;
  const before = beforeOf(supplement);
  const back = backOf(supplement);
  const wait = (one: Supplement['warranty']): Said => (one === undefined ? ['none stated'] : [own(figures.wait(one))]);
  const isOther = before !== undefined && JSON.stringify(before.warranty) !== JSON.stringify(warranty);
  return [
    ...(back === undefined ? [] : [{ label: 'Of that comes back', says: thenAndNow([own(figures.money(back.now))], back.then === undefined ? undefined : [own(figures.money(back.then))]) }]),
    ...(ready === undefined ? [] : [{ label: 'Ready', says: thenAndNow([own(readyOn(ready, figures))], before?.ready === undefined ? undefined : [own(readyOn(before.ready, figures))]) }]),
    ...(isOther ? [{ label: 'Warranty', says: thenAndNow(wait(warranty), wait(before.warranty)) }] : []),
  ];
}

function thenAndNow(now: Said, then: Said | undefined): Said {
  if (then === undefined) return now;
  return JSON.stringify(then) === JSON.stringify(now) ? [...now, ', as before'] : [...now, ' (before: ', ...then, ')'];
}

interface Back {
  /** Undefined where the version before is not at hand. */
  readonly then: Digits | undefined;
  readonly now: Digits;
}

/** What comes back, then and now; undefined where nothing did and nothing does. */
function backOf(supplement: Supplement): Back | undefined {
  const { comesBack, total } = supplement;
  const before = beforeOf(supplement);
  const nothing = zero.toFixed((total.split('.')[1] ?? '').length);
  const now = comesBack ?? nothing;
  const then = before === undefined ? undefined : (before.comesBack ?? nothing);
  return isNothing(now) && (then === undefined || isNothing(then)) ? undefined : { then, now };
}

interface BesideRow {
  readonly label: string;
  readonly before: Digits;
  readonly now: Digits;
  readonly more: Digits;
}

/** Rows below the total of what was and of what is: what comes back, and what is left of the total then. None where nothing came back. */
export function backRows(supplement: Supplement): readonly BesideRow[] {
  const { news, total } = supplement;
  const back = backOf(supplement);
  if (news.kind !== 'listed' || back?.then === undefined) return [];
  const [then, now] = [less(news.total, back.then), less(total, back.now)];
  return [
    { label: 'Of that comes back', before: back.then, now: back.now, more: less(back.now, back.then) },
    { label: 'Total less what comes back', before: then, now, more: less(now, then) },
  ];
}

export function depositsMovedSection({ deposits }: Supplement, figures: Figures): Section {
  return section('deposit', 'Deposit: what comes back', deposits.length === 0 ? [] : [{ kind: 'list', items: deposits.map((one) => movedSaid(one, figures)) }]);
}

function movedSaid({ deposit, before }: DepositMoved, figures: Figures): Said {
  return [...depositSaid(deposit, figures), ...(before === undefined ? [] : beforeSaid(before, figures))];
}

function beforeSaid({ refund, taxBack, until, late }: NonNullable<DepositMoved['before']>, figures: Figures): Said {
  if (late) return [' Before, nothing was expected back.'];
  const tax = isNothing(taxBack) ? [] : say`, and ${figures.money(taxBack)} of tax with it`;
  return [...say` Before, ${figures.money(refund)} was to come back`, ...tax, ...(until === undefined ? [] : say`, if it went back by ${figures.day(until)}`), '.'];
}

export function readyThenSection(supplement: Supplement, figures: Figures): Section {
  const { ready } = supplement;
  const then = beforeOf(supplement)?.ready;
  const now = readySaid(supplement, figures);
  const before = ready === undefined || then === undefined ? [] : readyOn(then, figures) === readyOn(ready, figures) ? [` The ${ready.date === undefined ? 'time' : 'day'} is as it was before.`] : say` Before, it was ${readyOn(then, figures)}.`;
  return section('ready', 'When it is ready', words([...now, ...before]));
}

/** What the paper that was agreed to did not say is left out. */
export function leftOutSection(supplement: Supplement): Section {
  const before = beforeOf(supplement);
  const fresh = before === undefined ? [] : supplement.leavesOut.filter((one) => !before.leavesOut.includes(one));
  return section('not-included', 'Not included, said since then', fresh.length === 0 ? [] : [{ kind: 'list', items: fresh.map((one) => [own(one)]) }]);
}
