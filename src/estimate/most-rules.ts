import type { Rule } from '../language/index.js';

const shop = 'steelyard 1\nshop "S"\n  currency USD\n  rate bench 100.00\n';

const numbered = (count: number, line: (i: number) => string) => Array.from({ length: count }, (_, i) => line(i + 1)).join('\n');

const ALL_JOBS = numbered(100, (line) => `  do ${Array.from({ length: 10 }, (_, i) => `job-${10 * line - 9 + i}`).join(', ')}`);

export const tooManyOfShop: Rule<{ readonly word: string; readonly most: number }> = {
  code: 'too-many-of-shop', family: 'money', severity: 'error', title: 'Too many lines of one kind below shop',
  message: ({ word, most }) => ({ what: `A shop has up to ${most} ${word} lines; this one and those below are left out.`, why: 'Every option is worked out with each of them, so no total is whole without the rest.', instead: 'Keep those that the shop really charges by.' }),
  example: `${shop}${numbered(40, (i) => `  tax tax-${i} "Tax ${i}" ${i}% on parts`)}\n  «tax one-more "One more" 1% on parts»\n`,
};

export const tooManyLines: Rule<{ readonly kind: string; readonly what: string; readonly most: number }> = {
  code: 'too-many-lines', family: 'money', severity: 'error', title: 'A line that brings too much',
  message: ({ kind, what, most }) => ({ what: `This ${kind} line brings more than ${most} ${what}; the others are left out.`, why: 'Nobody could check so long a quote, and without them the totals are too low.', instead: 'Put what always goes together on one line, with how many of it there are.' }),
  example: `${shop}«option repair "Repair"»\n${numbered(1_001, (i) => `  part "Bolt ${i}" 1.00 new`)}\n`,
};

export const tooLongInAll: Rule<{ readonly most: number }> = {
  code: 'too-long-in-all', family: 'money', severity: 'error', title: 'Options that bring too much together',
  message: ({ most }) => ({ what: `The options of an estimate bring up to ${most} lines together; this one and those below are left out.`, why: 'All of them are weighed against each other, line by line, after every key.', instead: 'Keep the ways out that are really offered, or write two estimates.' }),
  example: `${shop}${numbered(1_000, (i) => `labour job-${i} "Job ${i}" 1 h`)}\n${numbered(5, (o) => `option way-${o} "Way out ${o}"\n${ALL_JOBS}`)}\n«option way-6 "Way out 6"»\n  do job-1\n`,
};
