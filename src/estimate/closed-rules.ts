import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const job = (below: string, head = 'closed for repair on 2026-12-09') =>
  `steelyard 1\nshop "S"\n  rate bench 100.00\nlabour pump "Replace the pump" 2 h\noption repair "Replace the pump"\n  do pump\n  part "Old unit" 90.00 rebuilt\n    core 60.00 due 30 d\n${head}\n${below}`;

/** What a line of the closing gives, in words, with an example. */
export const actualWords = {
  clocked: { gives: 'the hours that were clocked', example: 'clocked pump 2.1 h', lines: 'work or way in' },
  paid: { gives: 'what was paid', example: 'paid pump 97.40', lines: 'part, outside work or fee' },
  credited: { gives: 'the core money that came back', example: 'credited "Used engine" 150.00', lines: 'part' },
} as const;
export type ActualWord = keyof typeof actualWords;

export const notInOption: Rule<{ readonly word: ActualWord; readonly says: string; readonly quoted: boolean; readonly option: string; readonly meant: string | undefined }> = {
  code: 'not-in-option', family: 'names', severity: 'warning', title: 'Something clocked or paid that the option does not have',
  message: ({ word, says, option, meant }) => ({
    what: `${clip(says)} is no ${actualWords[word].lines} of ${option}, nor of what may turn up in it.`,
    why: 'It is shown in the closing as not in the estimate, and its own line looks as if nobody had recorded it.',
    instead: meant === undefined ? 'Correct it, or leave it where it was done beside the estimate.' : `Did you mean ${clip(meant)}?`,
  }),
  fix: ({ meant, quoted }, at) => {
    if (meant === undefined) return undefined;
    const text = quoted ? `"${meant}"` : meant;
    return { title: `Write ${text}`, at, text };
  },
  example: job('  paid «"Old unot"» 71.00\n'),
};

export const actualTwice: Rule<{ readonly word: ActualWord; readonly says: string; readonly together: string }> = {
  code: 'actual-twice', family: 'names', severity: 'error', title: 'One line clocked or paid twice',
  message: ({ word, says, together }) => ({ what: `There is already a ${word} line for ${clip(says)}.`, why: 'Each stands once, with all of it together; only the first is used.', instead: `Write both as one: ${word} ${clip(says)} ${together}` }),
  example: job('  clocked pump 2.1 h\n  «clocked pump 0.4 h»\n'),
};

export const actualInThree: Rule<{ readonly likely: string }> = {
  code: 'actual-in-three', family: 'shape', severity: 'warning', title: 'What really was, in three figures',
  message: ({ likely }) => ({ what: 'What it really took is one figure: the middle one is used.', why: 'A range says what may be; here it is known.', instead: `Write ${likely}.` }),
  fix: ({ likely }, at) => ({ title: `Write ${likely}`, at, text: likely }),
  example: job('  clocked pump «1.8 / 2.1 / 2.5 h»\n'),
};

export const closedForNothing: Rule<undefined> = {
  code: 'closed-for-nothing', family: 'names', severity: 'warning', title: 'Hours clocked for no option',
  message: () => ({ what: 'This says what was clocked or paid, but not which option was done.', why: 'It can’t be held against an estimate, and the shop’s book of times leaves it out.', instead: 'Name the option: closed for used on 2026-12-09' }),
  example: job('  clocked pump 2.1 h\n', '«closed on 2026-12-09»'),
};

export const closedWhen: Rule<undefined> = {
  code: 'closed-when', family: 'job', severity: 'warning', title: 'Closed without a day',
  message: () => ({ what: 'This does not say when the job was closed.', why: 'The days that it took can’t be told, nor whether times change over the years.', instead: 'Write the day on which the vehicle left: on 2026-12-09' }),
  example: job('  clocked pump 2.1 h\n', '«closed for repair»'),
};

export const closedBefore: Rule<{ readonly closed: string; readonly other: string; readonly what: 'started' | 'written' }> = {
  code: 'closed-before', family: 'job', severity: 'warning', title: 'Closed before it began',
  message: ({ closed, other, what }) => ({ what: `It was closed on ${closed}, before ${what === 'started' ? 'work started' : 'the estimate was written'} (${other}).`, why: 'The days that it took can’t be told from that.', instead: 'Correct the one that is wrong.' }),
  example: 'steelyard 1\nestimate "Van"\n  written 2026-12-01\noption repair "Replace the pump"\nclosed for repair on «2026-11-09»\n',
};

export const creditedOver: Rule<{ readonly part: string; readonly charge: string | undefined }> = {
  code: 'credited-over', family: 'money', severity: 'warning', title: 'More core money back than was charged',
  message: ({ part, charge }) => ({ what: charge === undefined ? `${clip(part)} has no core charge.` : `The core charge of ${clip(part)} is ${charge}; more can’t come back.`, why: 'The closing counts it as written, and the job looks better than it was.', instead: charge === undefined ? 'Write the core below the part, as in core 150.00 due 30 d, or remove this line.' : `Write what was really received, ${charge} at most.` }),
  example: job('  credited "Old unit" «75.00»\n'),
};
