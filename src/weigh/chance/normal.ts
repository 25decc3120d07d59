import { exp, log } from './elementary.js';

/**
 * The chance that a standard normal variable is at most `x`, for any x, the infinities among them; NaN gives NaN.
 * Absolute error below 1e-15; relative error below 1e-12 down to x = -37, below which it is 0.
 *
 * Source: within 3 of the mean J. F. Hart et al., Computer Approximations (1968), algorithm 5666, with the
 * coefficients of G. West, "Better approximations to cumulative normal functions", Wilmott Magazine, 2005; beyond,
 * the continued fraction of Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2.14.
 */
export function normalCdf(x: number): number {
  const tail = upperTail(Math.abs(x));
  return x > 0 ? 1 - tail : tail;
}

/**
 * The x below which a standard normal variable lies with chance `p`; -Infinity at 0 and Infinity at 1.
 * Relative error below 1e-14. Throws a RangeError outside 0 to 1.
 *
 * Source: M. J. Wichura, "Algorithm AS 241: The percentage points of the normal distribution", Applied Statistics
 * 37 (1988), routine PPND16.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`A chance lies from 0 to 1, not at ${p}.`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, MIDDLE_TOP, MIDDLE_BOTTOM);
  if (p === 0 || p === 1) return q * Infinity;
  const r = Math.sqrt(-log(q < 0 ? p : 1 - p));
  const size = r <= 5 ? ratio(r - 1.6, TAIL_TOP, TAIL_BOTTOM) : ratio(r - 5, FAR_TOP, FAR_BOTTOM);
  return q < 0 ? -size : size;
}

/** Where the rational function gives way: farther out its printed coefficients lose digits of the tail. */
const HART_ENDS = 3;
/** From there on, 40 levels of the continued fraction leave a relative error below 1e-13. */
const FRACTION_LEVELS = 40;
const ROOT_OF_TWO_PI = 2.5066282746310005;

/** The chance above x, for x not negative. */
function upperTail(x: number): number {
  if (x > 37) return 0;
  const density = exp(-0.5 * x * x);
  if (x < HART_ENDS) return density * ratio(x, HART_TOP, HART_BOTTOM);
  let fraction = x;
  for (let level = FRACTION_LEVELS; level > 0; level--) fraction = x + level / fraction;
  return density / fraction / ROOT_OF_TWO_PI;
}

/** Two polynomials, divided; coefficients from the constant up. */
function ratio(x: number, top: readonly number[], bottom: readonly number[]): number {
  return polynomial(x, top) / polynomial(x, bottom);
}

function polynomial(x: number, coefficients: readonly number[]): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + (coefficients[i] as number);
  return value;
}

const HART_TOP = [220.206867912376, 221.213596169931, 112.079291497871, 33.912866078383, 6.37396220353165, 0.700383064443688, 3.52624965998911e-2];
const HART_BOTTOM = [440.413735824752, 793.826512519948, 637.333633378831, 296.564248779674, 86.7807322029461, 16.064177579207, 1.75566716318264, 8.83883476483184e-2];

const MIDDLE_TOP = [3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727];
const MIDDLE_BOTTOM = [1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061, 28729.085735721942674, 5226.495278852854561];
const TAIL_TOP = [1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258, 0.24178072517745061177, 2.27238449892691845833e-2, 7.7454501427834140764e-4];
const TAIL_BOTTOM = [1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 1.51986665636164571966e-2, 5.475938084995344946e-4, 1.05075007164441684324e-9];
const FAR_TOP = [6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 2.6532189526576123093e-2, 1.2426609473880784386e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7];
const FAR_BOTTOM = [1, 0.59983220655588793769, 0.1369298809227358053, 1.48753612908506148525e-2, 7.868691311456132591e-4, 1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15];
