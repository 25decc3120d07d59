import type { Draw } from './random-draw.js';

/** A currency; money is written mostly with its decimals, now and then finer or coarser. */
export interface Coins {
  readonly code: string;
  readonly digits: number;
}

/** A whole number of the smallest steps, as decimal digits. */
function decimal(steps: number, decimals: number): string {
  const padded = String(steps).padStart(decimals + 1, '0');
  return decimals === 0 ? padded : `${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`;
}

/** One figure, or three in order. */
function points(draw: Draw, ranged: number, decimals: number, one: () => number): string {
  if (!draw.chance(ranged)) return decimal(one(), decimals);
  return [one(), one(), one()].sort((a, b) => a - b).map((steps) => decimal(steps, decimals)).join(' / ');
}

/** Money up to about `most`, never nothing unless `free` is drawn. */
export function money(draw: Draw, coins: Coins, most: number, ranged = 15): string {
  const decimals = draw.chance(10) ? draw.upTo(4) : coins.digits;
  const scale = 10 ** decimals;
  const drawn = points(draw, ranged, decimals, () => 1 + draw.upTo(65_535) % (most * scale));
  // With three decimals it could be thousands, and is refused.
  const figure = decimals === 3 && coins.digits < 3 ? drawn.replace(/\.\d{3}/g, '$&0') : drawn;
  return coins.code !== '' && draw.chance(5) ? `${figure} ${coins.code}` : figure;
}

export function hours(draw: Draw, most = 12): string {
  if (draw.chance(25)) return `${points(draw, 20, 0, () => 5 * draw.between(1, most * 12))} min`;
  const decimals = draw.upTo(2);
  return `${points(draw, 30, decimals, () => draw.between(1, most * 10 ** decimals))} h`;
}

export function percentage(draw: Draw, most: number): string {
  const decimals = draw.upTo(3);
  return `${points(draw, 5, decimals, () => draw.between(1, most * 10 ** decimals))}%`;
}

/** `12`, `2.5`, `11 L`, `3 d`: what may stand before `at`. */
export function quantity(draw: Draw): string {
  if (draw.chance(60)) return String(draw.between(1, 24));
  return `${points(draw, 25, draw.upTo(1), () => draw.between(1, 90))} ${draw.pick(['L', 'qt', 'gal', 'kg', 'lb', 'm', 'ft'])}`;
}

export function workingWait(draw: Draw): string {
  if (draw.chance(15)) return `${draw.pick(['1', '2', '1.5', '0.7'])} ${draw.pick(['wk', 'mo'])}`;
  return `${points(draw, 20, 0, () => draw.between(0, 12))} d`;
}

export function calendarWait(draw: Draw): string {
  const count = draw.between(1, 40);
  return `${count % 3 === 0 ? count / 4 : count} ${draw.pick(['d', 'wk', 'mo'])}`;
}
