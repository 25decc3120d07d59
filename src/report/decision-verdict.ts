import { competes, type Decided, type Decision, type Flip } from '../weigh/index.js';
import { Decimal } from '../vocabulary/index.js';
import { aboutText, coveredSentence, flipSentence, inspectionSentence, shareText } from './decision-words.js';
import { ruledOutSentences } from './ruled-out.js';
import { accessSentence, leadSentence, unfinishedSentence, verdict } from './verdict.js';

/** Below this share of cases the cheapest option is only cheapest by luck. */
const CLEAR_SHARE = 2 / 3;

/** A choice that turns when one figure moves by less than this is no clear one. */
const CLEAR_DISTANCE = 0.03;

/** Farther flip points than this share of the figure are no reason to check it twice. */
export const NEAR = 0.8;

/**
 * One honest paragraph: what is cheaper, by how much and how sure, what is ready first, what flips it, and what to look
 * at before deciding. Where the options are too close to call, or the average clearly favours another one, it says so first.
 */
export function decisionVerdict(decision: Decision): string {
  const { comparison } = decision;
  const [first, second] = comparison.ranking;
  if (first === undefined || second === undefined) return verdict(comparison);
  const pick = decidedFor(decision, first.option.name);
  const rival = rivalOf(decision, pick);
  const next = rival ?? decidedFor(decision, second.option.name);
  const against = ruledOutSentences(comparison);
  const close = rival !== undefined && isClear(rival) ? turnedSentence(decision, pick, rival) : closeCall(decision, pick, rival);
  // Behind a sentence about something else “it” would be that.
  const sure = sureSentence(decision, pick, next, close === '' && against.length === 0 ? 'It' : pick.weighed.option.title);
  return [
    leadSentence(first, second, comparison.money),
    accessSentence(first, comparison),
    ...against,
    close,
    sure,
    readySentence(decision, pick, sure === '' && against.length > 0 ? pick.weighed.option.title : 'It'),
    nearestFlip(decision),
    lookFirst(decision),
    unfinishedSentence(comparison),
  ].filter((sentence) => sentence !== '').join(' ');
}

function decidedFor({ options }: Decision, name: string): Decided {
  return options.find(({ weighed }) => weighed.option.name === name) as Decided;
}

/** Why the choice is too close to call; nothing where it is clear. */
function closeCall(decision: Decision, pick: Decided, rival: Decided | undefined): string {
  const reasons = [
    ...(rival === undefined ? [] : [`on average ${rival.weighed.option.title} costs less`]),
    ...(pick.risk?.cheapest !== undefined && !isClear(pick) ? [`${pick.weighed.option.title} is the cheapest in only ${shareText(pick.risk.cheapest)} of the cases`] : []),
    ...(nearestQuoted(decision).some(({ share = Infinity }) => share < CLEAR_DISTANCE) ? ['a small change of one figure turns it'] : []),
  ];
  return reasons.length === 0 ? '' : `The choice is too close to call: ${reasons.join(', and ')}.`;
}

/** What may turn up speaks clearly for another option than the quoted figures do: that is no close call, but two answers. */
function turnedSentence({ cases, comparison: { money } }: Decision, pick: Decided, rival: Decided): string {
  const less = aboutText(Math.round(pick.average) - Math.round(rival.average), money);
  const alike = pick.weighed.inAll.likely.eq(rival.weighed.inAll.likely);
  const { title } = rival.weighed.option;
  const answers = alike ? `The quoted figures are the same, the average favours ${title} by ${less}` : `The quote favours ${pick.weighed.option.title}, the average favours ${title} by ${less}`;
  return `${answers}: ${title} is the cheapest in ${shareText(rival.risk?.cheapest ?? 0)} of ${cases} cases drawn from the ranges and chances.`;
}

function isClear({ risk }: Decided): boolean {
  return risk?.cheapest !== undefined && risk.cheapest >= CLEAR_SHARE;
}

/** The option that costs least on average, where that is another one. */
function rivalOf({ options }: Decision, pick: Decided): Decided | undefined {
  const least = options.filter(({ weighed }) => competes(weighed)).reduce((best, one) => (one.average < best.average ? one : best));
  return least !== pick && Math.round(least.average) < Math.round(pick.average) ? least : undefined;
}

function sureSentence({ cases, comparison: { money } }: Decision, pick: Decided, next: Decided, name: string): string {
  const { risk } = pick;
  if (risk?.cheapest === undefined || cases === undefined) return '';
  const turnsUp = [pick, next].some((one) => (one.risk?.trouble ?? 0) > 0);
  const averages = next.risk === undefined ? '' : `${turnsUp ? 'with what may turn up it' : 'it'} costs ${aboutText(pick.average, money)} on average, ${next.weighed.option.title} ${aboutText(next.average, money)}`;
  if (risk.cheapest < CLEAR_SHARE) return averages === '' ? '' : `${pick.weighed.option.title}: ${averages}.`;
  const often = `${name} is the cheapest in ${shareText(risk.cheapest)} of ${cases} cases drawn from the ranges and chances`;
  return averages === '' ? `${often}.` : `${often}; ${averages}.`;
}

/** When the pick is ready, and which repair would be ready sooner: selling it as it stands needs no work, and is none. */
function readySentence({ options }: Decision, pick: Decided, name: string): string {
  const { ready } = pick.weighed;
  const repairs = options.filter(({ weighed }) => competes(weighed) && weighed.option.written && !weighed.ready.bay.likely.isZero());
  if (!repairs.includes(pick) || repairs.length < 2) return '';
  const when = ready.date === undefined ? `in ${daysWords(ready.days.likely)}` : `on ${ready.date}`;
  const late = pick.risk?.ready?.p90;
  const sure = late === undefined || late === ready.date ? '' : `, in 9 of 10 cases by ${late}`;
  const soonest = repairs.reduce((best, one) => (one.weighed.ready.days.likely.lt(best.weighed.ready.days.likely) ? one : best), pick);
  const ahead = ready.days.likely.minus(soonest.weighed.ready.days.likely);
  const rank = ahead.isZero() ? soonestWords(repairs, pick) : `; ${soonest.weighed.option.title} is ${daysWords(ahead)} sooner`;
  return `${name} is ready ${when}${sure}${rank}.`;
}

function soonestWords(repairs: readonly Decided[], pick: Decided): string {
  const others = repairs.filter((one) => one !== pick);
  const next = others.reduce((least, one) => Decimal.min(least, one.weighed.ready.days.likely), new Decimal(Infinity));
  const lead = next.minus(pick.weighed.ready.days.likely);
  return lead.isZero() ? '' : `, ${daysWords(lead)} before any other repair`;
}

function daysWords(days: Decimal): string {
  return `${days.toFixed()} working day${days.eq(1) ? '' : 's'}`;
}

/** The flip points worth checking twice, nearest first. */
export function nearestQuoted({ flips }: Decision): readonly Flip[] {
  return flips.filter(({ measure, share = Infinity }) => measure === 'quoted' && share <= NEAR);
}

function nearestFlip(decision: Decision): string {
  const [flip] = nearestQuoted(decision);
  return flip === undefined ? 'No figure within four fifths of what is written turns the choice by itself.' : `Check first: ${lowered(flipSentence(flip, decision.comparison.money))}`;
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/** An inspection that pays, and coverage that may. */
function lookFirst({ inspections, coverages, comparison }: Decision): string {
  const worth = inspections.filter(({ verdict: of }) => of === 'worth doing').sort((a, b) => b.net - a.net)[0];
  const covered = coverages.filter(({ answer, coverage }) => answer === 'covered' && coverage.sort !== 'bulletin');
  return [...(worth === undefined ? [] : [inspectionSentence(worth, comparison)]), ...covered.map(coveredSentence)].join(' ');
}
