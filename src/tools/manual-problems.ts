import type { Problem, Severity } from '../language/index.js';
import { families, type AnyRule } from './all-rules.js';
import { fence, plain } from './markdown.js';
import { readMarks, underlined } from './marked-example.js';

/** Finds the problems of a file with one of the rules' examples in it. */
export type FindProblems = (text: string) => readonly Problem[];

const severities: Readonly<Record<Severity, string>> = {
  error: 'Error: the line can’t be priced as written.',
  warning: 'Warning: it is priced, but probably not what was meant.',
  advice: 'Advice: worth a look.',
};

const familyTitles: Readonly<Record<string, string>> = {
  shape: 'How a line is written',
  names: 'Names and shared files',
  job: 'The job',
  money: 'Money',
};

/** The chapter on problems: one section for each rule, under its code, with what the tool says for its example. */
export function problemsChapter(rules: readonly AnyRule[], findProblems: FindProblems): string {
  const groups = families.map((family) => ({ family, own: rules.filter((rule) => rule.family === family) })).filter(({ own }) => own.length > 0);
  return [
    '## Problems',
    'While you type, the tool marks what it can’t read or what looks wrong. Every message has three parts: what is wrong, why it matters to the quote, and what to write instead. Each kind of problem has a short code, which is shown with the message and is the heading here. In the examples, `^` stands under what is marked.',
    'Whether the work is complete, and whether the money adds up to a decision, is looked at once the file has an `estimate` line and an option with some work. These checks are common practice of the trade, not a rule of any maker; where a check is wrong about a line, say what the line counts as (see [Trade topics](#trade-topics)), or allow it.',
    'A comment `# allow CODE: the reason` at the end of a line, or on the line above it, allows that problem there:',
    fence('part pump "Coolant pump" 64.30  # allow condition-missing: told on the phone'),
    'Without its reason it is marked itself. A line that can’t be read can’t be allowed.',
    'If a check itself stops, `check-failed` is shown on the first line. All other checks are made all the same. If weighing itself stops, `weighing-stopped` is shown there, no option has figures, and the comparison panel keeps those from before and says so. Please report both.',
    ...groups.flatMap(({ family, own }) => [`### ${familyTitles[family] ?? family}`, ...own.map((rule) => section(rule, findProblems))]),
  ].join('\n\n');
}

function section(rule: AnyRule, findProblems: FindProblems): string {
  const marked = readMarks(rule.example);
  const found = findProblems(marked.text).find((problem) => problem.code === rule.code);
  return [
    `#### ${rule.code}`,
    `**${plain(rule.title)}.** ${severities[rule.severity]}${rule.besides === undefined ? '' : ` ${plain(rule.besides)}`}`,
    fence(shortened(underlined(marked))),
    ...(found === undefined ? [] : [said(found)]),
  ].join('\n\n');
}

const MOST_LINES = 24;

/** An example that needs hundreds of lines to go wrong is shown with its middle left out. */
function shortened(text: string): string {
  const lines = text.split('\n');
  if (lines.length <= MOST_LINES) return text;
  return [...lines.slice(0, 6), `… ${lines.length - 12} lines like these …`, ...lines.slice(-6)].join('\n');
}

function said({ message, fix }: Problem): string {
  const lines = [`**What:** ${plain(message.what)}`, `**Why:** ${plain(message.why)}`, `**Instead:** ${plain(message.instead)}`];
  const quick = fix === undefined ? [] : [`**In one step:** ${plain(fix.title)}`];
  return [...lines, ...quick].map((line) => `> ${line.replace(/\t/g, '[tab]')}`).join('  \n');
}
