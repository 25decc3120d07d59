import { Decimal } from '../vocabulary/index.js';
import { MOST_FIGURES, MOST_MOVING, MOST_PLANS, type Beyond, type Comparison, type Covered, type CoverReason, type Decided, type Flip, type InspectionWeighed, type Money, type Ready } from '../weigh/index.js';
import { grouped, moneyText, valueText } from './numbers.js';

/** A sampled or averaged amount: to the whole unit, since more would pretend. */
export function aboutText(value: number, money: Money): string {
  return moneyText(new Decimal(Math.round(value)), { ...money, currency: { ...money.currency, digits: 0 } });
}

/** A share as whole percent; what is neither none nor all never reads as that. */
export function shareText(share: number): string {
  if (share <= 0) return '0 %';
  if (share >= 1) return '100 %';
  const whole = Math.round(share * 100);
  return whole === 0 ? 'under 1 %' : whole === 100 ? 'over 99 %' : `${whole} %`;
}

/** How far off a flip point is, as a share of the figure: that may be several times the figure. */
export function distanceText(share: number): string {
  return share < 1 ? shareText(share) : `${Math.round(share * 100)} %`;
}

/** A likelihood where two averages cross has no end; digits beyond these are noise of the machine. */
const EXACT = 9;
const MOST_DIGITS = 4;

/**
 * Where a choice turns. A likelihood is rounded away from the side that it speaks of, so that what is said of all beyond it
 * holds for all of them, and never to 0 or 100 %, beyond which there is nothing.
 */
export function flipValueText({ holds, measure, way, figure: { unit } }: Pick<Flip, 'holds' | 'measure' | 'way' | 'figure'>, money: Money): string {
  const value = new Decimal(holds);
  if (measure === 'quoted') return valueText(value.toDecimalPlaces(2), unit, money);
  const crossing = value.toDecimalPlaces(EXACT);
  const to = (digits: number) => crossing.toDecimalPlaces(digits, way === 'above' ? Decimal.ROUND_CEIL : Decimal.ROUND_FLOOR);
  let digits = 1;
  while (digits < MOST_DIGITS && (to(digits).isZero() || to(digits).gte(100))) digits++;
  return valueText(to(digits), unit, money);
}

/** “Above 1,645.56 for “Used engine” (price) Rebuild the head is cheaper: 22 % away.” */
export function flipSentence(flip: Flip, money: Money): string {
  const value = flipValueText(flip, money);
  const away = flip.share === undefined ? '' : `: ${distanceText(flip.share)} away`;
  if (flip.measure === 'average') {
    return `If “${flip.line}” is ${flip.way === 'above' ? 'likelier' : 'less likely'} than ${value}, “${flip.to.title}” costs less on average${away}.`;
  }
  const what = figureWords(flip);
  return `${flip.way === 'above' ? 'Above' : 'Below'} ${value} for “${flip.line}”${what === '' ? '' : ` (${what})`}, “${flip.to.title}” is cheaper${away}.`;
}

/** What a figure is on its line, in a word or two; nothing where the line says it. */
export function figureWords({ figure, line }: Pick<Flip, 'figure' | 'line'>): string {
  // A title may be the beginning of a word, such as “P” of “Price”.
  const rest = figure.label.startsWith(line) ? figure.label.slice(line.length) : undefined;
  const label = rest === undefined || /^[\p{L}\p{N}]/u.test(rest) ? figure.label : rest.replace(/^[,:]? */, '');
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** What a search for flip points left out, or averages take as it is quoted. */
export function beyondSentence(beyond: Beyond): string {
  switch (beyond) {
    case 'figures': return `There are more than ${MOST_FIGURES} figures; those beyond were not tried.`;
    case 'plans': return `An option has more than ${MOST_PLANS - 1} ways to plan it; the ${MOST_PLANS} cheapest were tried.`;
    case 'sets': return `An option has more than ${MOST_MOVING} chances that may move its day; on average its cores count as they are quoted, back in time or not.`;
  }
}

/** Whether to look first, in one sentence. */
export function inspectionSentence(one: InspectionWeighed, { money, estimate }: Pick<Comparison, 'money' | 'estimate'>): string {
  const titleOf = (option: string) => estimate.options.find(({ name: its }) => its === option)?.title ?? option;
  const price = moneyText(one.price.likely, money);
  const name = `“${one.inspection.title}”`;
  switch (one.verdict) {
    case 'worth doing': {
      const changing = one.results.filter(({ changes }) => changes).map(({ shows, choose }) => `to “${titleOf(choose ?? '')}” if it shows ${shows.length === 0 ? 'nothing' : shows.map((title) => `“${title}”`).join(' and ')}`);
      return `Worth doing first: ${name} costs ${price}, saves ${aboutText(one.worth, money)} on average, and changes the choice ${changing.join(', or ')}.`;
    }
    case 'not worth its price': return `Not worth its price: ${name} costs ${price} and saves ${aboutText(one.worth, money)} on average.`;
    case 'cannot change the choice': return `No reason to wait: ${name} costs ${price}, and whatever it shows, “${titleOf(one.choose)}” stays the cheapest on average.`;
  }
}

/** An inspection of which a line could not be read. */
export function unreadSentence({ title }: InspectionWeighed['inspection']): string {
  return `Not weighed: “${title}” has a line that can’t be read, so what it costs or shows is not known. Whether it is worth doing can be told once that line is put right.`;
}

/** Whether a coverage holds as written, why, and what to do. No legal conclusion. */
export function coveredSentence({ coverage, answer, reasons, on }: Covered): string {
  const name = `“${coverage.title}”`;
  const telling = reasons.filter(({ holds }) => holds === (answer === 'covered' ? 'yes' : answer === 'not covered' ? 'no' : 'unknown'));
  const because = telling.length === 0 ? '' : ` (${[...new Set(telling.map(reasonWords))].join('; ')})`;
  const pays = coverage.sort === 'bulletin' ? ' A bulletin by itself pays nothing.' : '';
  switch (answer) {
    case 'covered': return `${name} covers this vehicle as written${because}. Before quoting, have the maker’s dealer look it up by the VIN: who pays is theirs to say.${pays}`;
    case 'not covered': return `${name} does not cover this vehicle as written${because}. A look-up by the VIN goes before what is written here.${pays}`;
    case 'unknown': return `Whether ${name} covers this vehicle can’t be told${because === '' && on === undefined ? ' without a date' : because}. Write down what is missing, or have it looked up by the VIN.${pays}`;
  }
}

function reasonWords(reason: CoverReason): string {
  const distance = ({ value, unit }: { readonly value: Decimal; readonly unit: string }) => `${grouped(value.toFixed())} ${unit}`;
  if (reason.missing !== undefined) return missingWords[reason.missing];
  switch (reason.condition) {
    case 'built from': return `built ${reason.found ?? ''}, it begins with ${reason.limit}`;
    case 'built to': return `built ${reason.found ?? ''}, it ends with ${reason.limit}`;
    case 'model year': return `model year ${reason.found ?? ''}, it is for ${reason.limit.join(', ')}`;
    case 'distance': return `${reason.found === undefined ? '' : distance(reason.found)} driven, it is for up to ${distance(reason.limit)}`;
    case 'until': return `asked for ${reason.found}, it ends on ${reason.limit}`;
    case 'months since build': case 'days since build': return `it ends ${reason.limit} ${reason.condition === 'days since build' ? 'days' : 'months'} after building${reason.ends === undefined ? '' : `, on ${reason.ends.last}`}`;
  }
}

const missingWords: Readonly<Record<NonNullable<CoverReason['missing']>, string>> = {
  built: 'when it was built is not written',
  'day built': 'the day it was built is needed, not only the month',
  'model year': 'its model year is not written',
  odometer: 'what the odometer shows is not written',
};

/** What a wait holds up, where no line says which work needs it. */
export const HOLDS_ALL = 'no work uses it, so all further work waits';

/** What decides the day of an option: its critical pieces in order, and what can't be told. */
export function criticalWords({ tasks }: Ready): string {
  return tasks.filter(({ critical }) => critical).sort((a, b) => a.start - b.start).map(({ task: { title, holdsAll } }) => (holdsAll ? `${title} (${HOLDS_ALL})` : title)).join(' → ');
}

/** How sure an option is to be the cheapest: “cheapest in 77 % of 1000 cases”. */
export function certaintyWords({ risk }: Decided, cases: number | undefined): string | undefined {
  return risk?.cheapest === undefined || cases === undefined ? undefined : `cheapest in ${shareText(risk.cheapest)} of ${cases} cases`;
}
