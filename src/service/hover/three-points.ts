import type { Token } from '../../language/index.js';
import { Decimal } from '../../vocabulary/index.js';
import type { At } from '../at.js';
import type { Meaning } from './meaning.js';

const SHOWN = 3;

/**
 * Low, likely and high under the pointer: their mean and spread, by two formulas that are in use. The quote takes the
 * likely figure alone, and this says so.
 */
export function threePointsAt({ statement, token }: At): Meaning | undefined {
  if (statement === undefined || token === undefined) return undefined;
  const { tokens } = statement;
  const i = tokens.findIndex(({ start }) => start === token.start);
  for (let from = Math.max(0, i - 4); from <= i; from++) {
    const run = tokens.slice(from, from + 5);
    if (!isThree(run)) continue;
    const unit = tokens[from + 5];
    const unitText = unit?.kind === 'word' && unit.text !== 'at' && unit.text.length <= 3 ? ` ${unit.text}` : unit?.text === '%' ? ' %' : '';
    const [a, m, b] = [run[0], run[2], run[4]].map((one) => new Decimal((one as Token).text)) as [Decimal, Decimal, Decimal];
    if (a.gt(m) || m.gt(b)) return undefined;
    return { from: run[0] as Token, to: run[4] as Token, paragraphs: saysOf(a, m, b, unitText) };
  }
  return undefined;
}

function isThree(run: readonly Token[]): boolean {
  return run.length === 5 && run.every((one, i) => (i % 2 === 0 ? one.kind === 'number' && one.text.length <= 18 : one.text === '/'));
}

function saysOf(a: Decimal, m: Decimal, b: Decimal, unit: string): string[] {
  const text = (value: Decimal) => `${value.toDecimalPlaces(SHOWN).toFixed()}${unit}`;
  // Triangular distribution: mean (a+m+b)/3, variance (a²+m²+b²−am−ab−mb)/18.
  const triangularMean = a.plus(m).plus(b).div(3);
  const triangularVariance = a.times(a).plus(m.times(m)).plus(b.times(b)).minus(a.times(m)).minus(a.times(b)).minus(m.times(b)).div(18);
  const pertMean = a.plus(m.times(4)).plus(b).div(6);
  const pertSpread = b.minus(a).div(6);
  return [
    `Quoted: the likely figure, ${text(m)}; ${text(a)} and ${text(b)} make the low and high totals.`,
    `Not quoted, triangular: mean (a+m+b)/3 = ${text(triangularMean)}, spread (standard deviation) ${text(triangularVariance.sqrt())}.`,
    `Not quoted, beta-PERT: mean (a+4m+b)/6 = ${text(pertMean)}, variance ((b−a)/6)² = ${pertSpread.times(pertSpread).toDecimalPlaces(SHOWN).toFixed()}, spread ${text(pertSpread)}. Formulas: Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5), 1959.`,
  ];
}
