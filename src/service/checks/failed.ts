import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';

/** One check, or what prepares all of them. The fault is the tool's, not the writer's. No file shows it on purpose, so it is not among the rules with examples. */
export const checkFailed: Rule<{ readonly check: string | undefined; readonly why: string }> = {
  code: 'check-failed', family: 'shape', severity: 'advice', title: 'A check that stopped',
  message: ({ check, why }) => ({
    what: check === undefined ? `The checks of the trade stopped with “${clip(why)}”.` : `The check ${check} stopped with “${clip(why)}”.`,
    why: check === undefined ? 'What they look for may be in this file all the same; figures, and lines that can’t be read, are told as ever.' : 'What it looks for may be in this file all the same; all other checks were made.',
    instead: 'Please report it, with the lines it is about if you can.',
  }),
  example: '',
};
