import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { passChanges } from './pass-changes.js';
import { passFeatures } from './pass-features.js';
import { passDecision, passReports } from './pass-reports.js';
import { passEdit, passService } from './pass-service.js';
import { passFormat, passText } from './pass-text.js';
import { passTrials } from './pass-trials.js';

/** How many of a hundred inputs go through what is dearer than the rest. Every input goes through text and service. */
export interface Shares {
  readonly format: number;
  readonly edit: number;
  readonly features: number;
  readonly reports: number;
  readonly changes: number;
  readonly trials: number;
  readonly decision: number;
}

export const EVERY: Shares = { format: 100, edit: 100, features: 100, reports: 100, changes: 100, trials: 100, decision: 100 };

export type Pass = 'text' | 'service' | keyof Shares;

/** Puts an input through the product. Throws at what does not hold; `went` hears of each pass that begins. */
export function through(input: Input, dice: Dice, shares: Shares, went: (pass: Pass) => void): void {
  // Thrown before anything else is, so that a smaller input goes the same way.
  const goes = Object.fromEntries(Object.entries(shares).map(([pass, share]) => [pass, dice.chance(share as number)])) as { readonly [pass in keyof Shares]: boolean };
  went('text');
  const tree = passText(input, dice);
  if (goes.format) {
    went('format');
    passFormat(tree, dice);
  }
  went('service');
  const desk = passService(input, dice);
  if (goes.edit) {
    went('edit');
    passEdit(input, desk);
  }
  if (goes.features) {
    went('features');
    passFeatures(input, desk, dice);
  }
  if (goes.reports) {
    went('reports');
    passReports(input, desk);
  }
  if (goes.changes) {
    went('changes');
    passChanges(input, desk);
  }
  if (goes.trials) {
    went('trials');
    passTrials(input, desk, dice);
  }
  if (goes.decision) {
    went('decision');
    passDecision(input, desk);
  }
}
