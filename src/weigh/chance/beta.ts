import { exp, log } from './elementary.js';

/** A beta distribution on 0 to 1. */
export interface Beta {
  readonly alpha: number;
  readonly beta: number;
  /** The chance of at most x, which may lie outside 0 to 1: the regularised incomplete beta function, error below 1e-13. */
  readonly cdf: (x: number) => number;
  /** The x with cdf(x) = p, for p from 0 to 1; error below 1e-12. `near` is a first guess, and only saves time. */
  readonly quantile: (p: number, near?: number) => number;
  readonly density: (x: number) => number;
}

/**
 * The beta distribution with parameters of at least 1 (and below 1e6): no infinite densities. Throws a RangeError
 * for others.
 *
 * Source: continued fraction DLMF 8.17.22 by the modified Lentz method (Press et al., Numerical Recipes, 6.4);
 * quantiles by Halley's method, held in a bracket that is halved where a step leaves it.
 */
export function betaOf(alpha: number, beta: number): Beta {
  if (!(alpha >= 1 && beta >= 1 && alpha < 1e6 && beta < 1e6)) throw new RangeError(`A beta distribution is wanted with parameters from 1 on, not ${alpha} and ${beta}.`);
  const logScale = logGamma(alpha + beta) - logGamma(alpha) - logGamma(beta);
  return { alpha, beta, cdf, quantile, density };

  function cdf(x: number): number {
    return x <= 0 ? 0 : x >= 1 ? 1 : below(x, front(x));
  }

  function density(x: number): number {
    if (x < 0 || x > 1) return 0;
    return exp(logScale + (alpha === 1 ? 0 : (alpha - 1) * log(x)) + (beta === 1 ? 0 : (beta - 1) * log(1 - x)));
  }

  /** x^alpha (1 - x)^beta / B(alpha, beta), for x within 0 to 1: what the distribution and its density have in common. */
  function front(x: number): number {
    return exp(logScale + alpha * log(x) + beta * log(1 - x));
  }

  function below(x: number, scale: number): number {
    return x * (alpha + beta + 2) < alpha + 1 ? (scale * fraction(x, alpha, beta)) / alpha : 1 - (scale * fraction(1 - x, beta, alpha)) / beta;
  }

  function quantile(p: number, near = alpha / (alpha + beta)): number {
    if (!(p >= 0 && p <= 1)) throw new RangeError(`A chance lies from 0 to 1, not at ${p}.`);
    if (p === 0 || p === 1) return p;
    let low = 0;
    let high = 1;
    let x = near > 0 && near < 1 ? near : 0.5;
    for (let i = 0; i < MOST_STEPS; i++) {
      const scale = front(x);
      const over = below(x, scale) - p;
      if (over > 0) high = x;
      else low = x;
      const room = x * (1 - x);
      const newton = (over * room) / scale;
      const bend = newton * ((alpha - 1) / x - (beta - 1) / (1 - x));
      const step = bend < 1 ? newton / (1 - bend / 2) : newton;
      const next = x - step;
      if (!(next > low && next < high)) {
        // At a bound of the bracket with nowhere to go, as where x is exact: halving would lead away from it again.
        if (Math.abs(step) <= 1e-15) return x;
        x = low + (high - low) / 2;
        continue;
      }
      x = next;
      // The step's error is about its cube.
      if (Math.abs(step) <= 1e-6 * room) return x;
    }
    return x;
  }
}

const MOST_STEPS = 200;

/** The continued fraction of I_x(a, b); quick for x below (a + 1)/(a + b + 2). */
function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = away(1 - ((a + b) * x) / (a + 1));
  d = 1 / d;
  let value = d;
  for (let m = 1; m <= MOST_LEVELS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return value;
}

const MOST_LEVELS = 3000;

/** Kept away from nothing, as the Lentz method asks. */
function away(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/** ln Γ(x) for x from 1 on: Stirling's series (Abramowitz & Stegun 6.1.41) after raising x to 10 or more. */
function logGamma(x: number): number {
  let raised = x;
  let product = 1;
  for (; raised < 10; raised++) product *= raised;
  const inverse = 1 / raised;
  const square = inverse * inverse;
  const series = inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188 - square * (691 / 360360 - square / 156))))));
  return (raised - 0.5) * log(raised) - raised + HALF_LOG_TWO_PI + series - log(product);
}

const HALF_LOG_TWO_PI = 0.9189385332046728;
