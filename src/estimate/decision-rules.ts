import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const shop = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const option = (below: string) => `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n${below}`;

export const overHundred: Rule<{ readonly written: string; readonly of: 'chance' | 'finds' }> = {
  code: 'over-hundred', family: 'shape', severity: 'error', title: 'A chance over 100 %',
  message: ({ written, of }) => of === 'chance'
    ? { what: `A chance can't be over 100 %; this is ${clip(written)} %.`, why: 'What happens in every case is no chance but part of the job, and risk can’t be worked out from it.', instead: 'Write a figure from 0% to 100%, or put the work on the job itself.' }
    : { what: `An inspection can't show something in more than 100 of 100 cases; this is ${clip(written)} %.`, why: 'Whether it is worth its price can’t be worked out from it.', instead: 'Write a figure from 0% to 100%: finds cracked 90% wrongly 5%' },
  example: option('  chance cracked "The head is cracked" «120%»\n    part "Bare head" 690.00 used\n'),
};

export const percentMissing: Rule<{ readonly what: string; readonly example: string }> = {
  code: 'percent-missing', family: 'money', severity: 'error', title: 'A chance without its percentage',
  message: ({ what, example }) => ({ what: `This line does not say ${what}.`, why: 'Neither risk nor range can be worked out without it, and no inspection can be weighed.', instead: `Write it as in: ${example}` }),
  example: option('  «chance cracked "The head is cracked"»\n    part "Bare head" 690.00 used\n'),
};

export const chanceInThree: Rule<{ readonly likely: string }> = {
  code: 'chance-in-three', family: 'shape', severity: 'warning', title: 'A chance with three figures',
  message: ({ likely }) => ({ what: 'How likely something is, is one figure: the middle one is used.', why: 'A percentage says already that it may or may not be so.', instead: `Write ${likely}%.` }),
  fix: ({ likely }, at) => ({ title: `Write ${likely}%`, at, text: `${likely}%` }),
  example: option('  chance cracked "The head is cracked" «5 / 12 / 30%»\n    part "Bare head" 690.00 used\n'),
};

export const chanceOfNothing: Rule<undefined> = {
  code: 'chance-of-nothing', family: 'money', severity: 'warning', title: 'A chance that takes nothing',
  message: () => ({ what: 'This chance does not say what it then takes.', why: 'It moves neither money nor days, so nobody is warned by it.', instead: 'Write the work or the parts below it: part "Bare head casting" 690.00 used arrives 5 d' }),
  example: option('  «chance cracked "The head is cracked" 12%»\n'),
};

export const tooManyChances: Rule<{ readonly count: number; readonly most: number }> = {
  code: 'too-many-chances', family: 'money', severity: 'error', title: 'Too many chances in one option',
  message: ({ count, most }) => ({ what: `This option has ${count} chances with those of its work; all that may happen together is worked out for up to ${most}.`, why: 'The chances beyond are left out of its risk, so it looks surer than it is.', instead: 'Leave out those that hardly matter, or put several into one line.' }),
  example: `${shop}«option repair "Repair the head"»\n  labour "Rear head" 8 h\n${Array.from({ length: 13 }, (_, i) => `  chance "Trouble ${i + 1}" 5%\n    part "Spare ${i + 1}" 10.00 new`).join('\n')}\n`,
};

export const inspectFindsNothing: Rule<undefined> = {
  code: 'inspect-finds-nothing', family: 'money', severity: 'error', title: 'An inspection that tells nothing apart',
  message: () => ({ what: 'This inspection does not say what it would find.', why: 'Whether it is worth its price follows from the chances that it tells apart.', instead: 'Name a chance below it, and how well it shows it: finds cracked 90% wrongly 5%' }),
  example: `${shop}«inspect dye-test "Dye test of the head" 95.00»\n`,
};

export const serviceOfNothing: Rule<undefined> = {
  code: 'service-of-nothing', family: 'money', severity: 'error', title: 'A service of no time',
  message: () => ({ what: 'A service of less than one month can’t be spread over months.', why: 'The cost in each month would have no end.', instead: 'Write how long the vehicle is expected to serve: lasts 48 mo' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n  lasts «0 mo»\n`,
};

export const interestTooHigh: Rule<{ readonly written: string }> = {
  code: 'interest-too-high', family: 'money', severity: 'warning', title: 'Interest that can hardly be meant',
  message: ({ written }) => ({ what: `${clip(written)} % in a year is more than the money itself.`, why: 'It is interest for a year; the cost in each month would be far too high.', instead: 'Write the rate of a year, such as interest 6%' }),
  example: 'steelyard 1\nestimate "Van"\n  interest «600%»\n',
};

export const orderCircle: Rule<{ readonly chain: readonly string[] }> = {
  code: 'order-circle', family: 'names', severity: 'error', title: 'Work that waits for itself',
  message: ({ chain }) => ({ what: `These wait for each other: ${chain.map(clip).join(' → ')}.`, why: 'None of them could ever start, so the calendar leaves out what after says here.', instead: 'Remove one of the after lines. Work that sends something away and then goes on says how far it gets: apart after 4 h' }),
  example: `${shop}labour head-off "Take the head off" 4 h\n  after head-on\nlabour head-on "Refit the head" 6 h\n  after head-off\n«option repair "Repair the head"»\n  do head-off, head-on\n`,
};

export const nameInUse: Rule<{ readonly name: string }> = {
  code: 'unrepaired-name', family: 'names', severity: 'warning', title: 'A name that selling as it stands would have',
  message: ({ name }) => ({ what: `The vehicle says what it brings unrepaired, which is weighed as an option called ${name}; this option has that name too.`, why: 'Only the one written here is shown.', instead: 'Give this option another name, or remove unrepaired.' }),
  example: `${shop}vehicle "Van"\n  unrepaired 900.00\noption «as-it-stands» "Sell it for parts"\n  worth 700.00\n`,
};

export const coverageBackwards: Rule<{ readonly from: string; readonly to: string }> = {
  code: 'coverage-backwards', family: 'shape', severity: 'error', title: 'A building range that runs backwards',
  message: ({ from, to }) => ({ what: `It ends (${to}) before it begins (${from}).`, why: 'No vehicle could be in it.', instead: 'Write the earlier one behind built from.' }),
  example: 'steelyard 1\ncoverage guides "Valve guides" recall\n  built from 2013-02\n  built to «2012-06»\n',
};

export const coverageOfEverything: Rule<undefined> = {
  code: 'coverage-of-everything', family: 'job', severity: 'advice', title: 'A coverage without limits',
  message: () => ({ what: 'This coverage does not say which vehicles it holds for.', why: 'Whether it covers this one can’t be told.', instead: 'Write what it says: built from, built to, years, up to, within or until.' }),
  example: 'steelyard 1\n«coverage guides "Valve guides, extended" extended-warranty»\n',
};

export const tooManyFinds: Rule<{ readonly most: number }> = {
  code: 'too-many-finds', family: 'money', severity: 'warning', title: 'An inspection that tells too much apart',
  message: ({ most }) => ({ what: `One inspection tells up to ${most} chances apart; this one and those below are left out.`, why: 'Every chance doubles what it may show, and nobody could read the answer.', instead: 'Keep the chances that could change the choice.' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n${Array.from({ length: 7 }, (_, i) => `  chance trouble-${i + 1} "Trouble ${i + 1}" 5%\n    part "Spare ${i + 1}" 10.00 new`).join('\n')}\ninspect look "Look" 10.00\n${Array.from({ length: 7 }, (_, i) => (i === 6 ? '  «finds trouble-7 90%»' : `  finds trouble-${i + 1} 90%`)).join('\n')}\n`,
};

export const unrepairedAlone: Rule<undefined> = {
  code: 'unrepaired-alone', family: 'money', severity: 'warning', title: 'What it brings unrepaired, but not what it is worth mended',
  message: () => ({ what: 'Nothing says what the vehicle is worth once it is mended.', why: 'Selling it as it stands would look free beside the options, so it is not weighed with them.', instead: 'Write worth below vehicle, or on every option.' }),
  example: `${shop}vehicle "Van"\n  unrepaired «900.00»\noption repair "Repair the head"\n  labour "Rear head" 8 h\n`,
};
