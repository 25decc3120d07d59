import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';

/** The fault is the tool's, not the writer's. No file shows it on purpose, so it is not among the rules with examples. */
export const checkFailed: Rule<{ readonly check: string; readonly why: string }> = {
  code: 'check-failed', family: 'shape', severity: 'advice', title: 'A check that stopped',
  message: ({ check, why }) => ({ what: `The check ${check} stopped with “${clip(why)}”.`, why: 'What it looks for may be in this file all the same; all other checks were made.', instead: 'Please report it, with the lines it is about if you can.' }),
  example: '',
};
