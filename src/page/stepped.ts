import { FIGURE } from './messages.js';

/**
 * A figure some steps up or down, never below nothing, with the decimals that it is written with. A step is about a
 * hundredth of the figure in the file, as a round one: 1, 2 or 5 and noughts, and no finer than its last decimal.
 */
export function stepped(from: string, today: string, steps: number): string | undefined {
  if (!FIGURE.test(from) || !FIGURE.test(today)) return undefined;
  const decimals = Math.max(decimalsOf(from), decimalsOf(today));
  const value = scaled(from, decimals) + BigInt(steps) * roundStep(scaled(today, decimals));
  return written(value < 0n ? 0n : value, decimals);
}

function roundStep(of: bigint): bigint {
  const hundredth = String(of / 100n);
  const first = Number(hundredth[0]);
  const noughts = 10n ** BigInt(hundredth.length - 1);
  return of < 100n ? 1n : BigInt(first >= 5 ? 5 : first >= 2 ? 2 : 1) * noughts;
}

function decimalsOf(figure: string): number {
  return figure.includes('.') ? figure.length - figure.indexOf('.') - 1 : 0;
}

function scaled(figure: string, decimals: number): bigint {
  const [whole = '0', part = ''] = figure.split('.');
  return BigInt(whole + part.padEnd(decimals, '0'));
}

function written(value: bigint, decimals: number): string {
  const digits = String(value).padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
