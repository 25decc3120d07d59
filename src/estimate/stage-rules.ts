import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const shop = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const front = 'access front-off "Front off"\n  remove 2 h\n  refit 3 h\n';
const strip = 'labour strip "Strip the front" 4 h with front-off\n';

export const stageEmpty: Rule<undefined> = {
  code: 'stage-empty', family: 'money', severity: 'warning', title: 'A stage without work',
  message: () => ({ what: 'This stage does no work and opens nothing.', why: 'It has no price, so there is nothing in it to authorise.', instead: 'Name its work with do, and the ways in that it opens with opens.' }),
  example: `${shop}«stage tear-down "Take the front apart"»\n  put back 3 h\n`,
};

export const stageWithoutPutBack: Rule<undefined> = {
  code: 'stage-without-put-back', family: 'money', severity: 'advice', title: 'A stage that does not say what putting back takes',
  message: () => ({ what: 'This stage takes things apart and does not say how long putting them together again takes.', why: 'The customer may stop there, and is then told what that costs: so far only closing the ways in.', instead: 'Write it below, as in put back 3.5 h.' }),
  example: `${shop}labour strip "Strip the front" 4 h\n«stage tear-down "Take the front apart"»\n  do strip\n`,
};

export const stageOpensFree: Rule<{ readonly way: string }> = {
  code: 'stage-opens-free', family: 'money', severity: 'warning', title: 'A stage opens a way in that takes no time',
  message: ({ way }) => ({ what: `The way in ${clip(way)} has no hours to remove.`, why: 'The price of the stage counts nothing for getting in.', instead: 'Add remove with its hours to the access line.' }),
  example: `${shop}access front-off "Front off"\n  refit 3 h\n${strip}stage tear-down "Take the front apart"\n  do strip\n  opens «front-off»\n  put back 3 h\n`,
};

export const stageOutOfReach: Rule<{ readonly job: string; readonly takes: string }> = {
  code: 'stage-out-of-reach', family: 'money', severity: 'error', title: 'Work of a stage that can’t be reached',
  message: ({ job, takes }) => ({ what: `${clip(job)} can't be done with what this stage opens.`, why: 'It is left out of the stage and of every option, so their totals are too low.', instead: `Add what it takes to opens: ${takes}.` }),
  example: `${shop}${front}${strip}stage tear-down "Take the front apart"\n  do «strip»\n  put back 3 h\n`,
};

export const stageTwice: Rule<{ readonly what: string; readonly stage: string; readonly does: 'work' | 'way' }> = {
  code: 'stage-twice', family: 'money', severity: 'warning', title: 'Two stages with the same work',
  message: ({ what, stage, does }) => ({
    what: `${clip(what)} is ${does === 'work' ? 'done' : 'opened'} in stage ${clip(stage)} already.`,
    why: 'Options charge it once, but each stage by itself counts it, so the customer would authorise it twice.',
    instead: 'Leave it in the stage that comes first.',
  }),
  example: `${shop}labour strip "Strip the front" 4 h\nstage tear-down "Take the front apart"\n  do strip\n  put back 3 h\nstage look "Look at the bearings"\n  do «strip»\n  put back 1 h\n`,
};

export const pinLacksStage: Rule<{ readonly option: string; readonly ways: readonly string[]; readonly stage: string }> = {
  code: 'pin-lacks-stage', family: 'money', severity: 'warning', title: 'Pinned ways in without what a stage opens',
  message: ({ option, ways, stage }) => ({
    what: `Option ${clip(option)} pins its ways in without ${ways.map((way) => clip(way)).join(', ')}, which stage ${clip(stage)} opens.`,
    why: 'What a stage opens is paid for in every option, pinned or not, so its price is in this total too.',
    instead: 'Add it to the way line, or remove the way line.',
  }),
  example: `${shop}${front}${strip}labour pump "Replace the pump" 2 h\noption repair "Repair"\n  do pump\n  way «in-car»\nstage tear-down "Take the front apart"\n  do strip\n  opens front-off\n  put back 3 h\n`,
};

export const tooManyStages: Rule<{ readonly most: number }> = {
  code: 'too-many-stages', family: 'money', severity: 'error', title: 'Too many stages',
  message: ({ most }) => ({ what: `An estimate has up to ${most} stages; this one and those below are left out.`, why: 'Each is in the total of every option, so no total is whole without them.', instead: 'Put what is authorised together into one stage.' }),
  example: `${shop}labour look "Look" 1 h\n${Array.from({ length: 12 }, (_, i) => `labour job-${i + 1} "Job ${i + 1}" 1 h\nstage part-${i + 1} "Part ${i + 1}"\n  do job-${i + 1}\n  put back 1 h`).join('\n')}\n«stage one-more "One more"»\n  do look\n  put back 1 h\n`,
};
