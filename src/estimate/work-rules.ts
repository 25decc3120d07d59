import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const shop = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';

function thirteen(line: (i: number) => string): string {
  return Array.from({ length: 13 }, (_, i) => line(i + 1)).join('\n');
}

export const hoursMissing: Rule<undefined> = {
  code: 'hours-missing', family: 'money', severity: 'error', title: 'Work without its hours',
  message: () => ({ what: 'This work does not say how long it takes.', why: 'It is left out of the totals of every option that does it.', instead: 'Write the hours on the line, or takes lines below it: takes 4.5 h with engine-lifted.' }),
  example: `${shop}«labour pump "Replace the pump"»\n`,
};

export const takesTwice: Rule<{ readonly way: string }> = {
  code: 'takes-twice', family: 'names', severity: 'error', title: 'Two times for one way in',
  message: ({ way }) => ({ what: `This work already says how long it takes ${way}.`, why: 'Only one can be true; the first is used.', instead: 'Remove one, or name another way in behind with.' }),
  example: `${shop}labour pump "Replace the pump"\n  takes 9 h\n  «takes 8 h»\n`,
};

export const accessEmpty: Rule<undefined> = {
  code: 'access-empty', family: 'money', severity: 'warning', title: 'A way in that costs nothing',
  message: () => ({ what: 'This way in has neither hours nor parts nor outside work.', why: 'Getting in and putting it back takes time; a way in without any looks free, and every option will take it.', instead: 'Add remove and refit with their hours.' }),
  example: `${shop}«access engine-out "Engine out"»\n`,
};

export const noWayIn: Rule<{ readonly job: string; readonly option: string; readonly takes: string }> = {
  code: 'no-way-in', family: 'money', severity: 'error', title: 'Work that can’t be reached',
  message: ({ job, option, takes }) => ({
    what: `${clip(job)} can't be done in option ${clip(option)} with the ways in that it pins.`,
    why: 'It is left out of the total, so the total is too low.',
    instead: `It takes ${takes}: add that to the way line, or remove the way line.`,
  }),
  example: `${shop}access engine-out "Engine out"\n  remove 6 h\n  refit 7 h\nlabour rear-head "Rear head" 7 h with engine-out\noption rebuild "Rebuild"\n  do rear-head\n  way «in-car»\n`,
};

export const tooManyWays: Rule<{ readonly count: number; readonly most: number; readonly pinned: boolean }> = {
  code: 'too-many-ways', family: 'money', severity: 'error', title: 'Too many ways in to compare',
  message: ({ count, most, pinned }) => (pinned
    ? { what: `This option pins ${count} ways in, with those that they include; up to ${most} can be told apart.`, why: 'No total is shown rather than one that may count a way in twice, or none.', instead: 'Pin fewer, or write those that are always opened together as one.' }
    : { what: `The work of this option names ${count} ways in; the cheapest mix is worked out exactly for up to ${most}.`, why: 'No total is shown rather than one that may not be the cheapest.', instead: 'Pin the ways in with way, or leave out those that nobody would use.' }),
  example: `${shop}${thirteen((i) => `access way-${i} "Way ${i}"\n  remove ${i} h`)}\nlabour pump "Replace the pump"\n${thirteen((i) => `  takes ${30 - i} h with way-${i}`)}\n«option repair "Replace the pump"»\n  do pump\n`,
};

export const tooManyOptions: Rule<{ readonly most: number }> = {
  code: 'too-many-options', family: 'money', severity: 'error', title: 'Too many options to compare',
  message: ({ most }) => ({ what: `An estimate compares up to ${most} options; this one and those below are left out.`, why: 'Nobody could read more side by side.', instead: 'Keep the ways out that are really offered.' }),
  example: `${shop}${Array.from({ length: 40 }, (_, i) => `option way-${i + 1} "Way out ${i + 1}"\n  worth ${i}`).join('\n')}\n«option way-41 "Way out 41"»\n`,
};

export const compressionUneven: Rule<{ readonly low: string; readonly high: string; readonly share: string }> = {
  code: 'compression-uneven', family: 'job', severity: 'advice', title: 'Compression lower than three quarters of the best',
  message: ({ low, high, share }) => ({ what: `The lowest reading, ${low}, is ${share} % of the highest, ${high}.`, why: 'Public workshop manuals call for at least 75 % (TM 5-4210-230-14&P-1); the maker’s own figure comes first.', instead: 'If it rises with a spoon of oil, look at the rings; if not, at the valves; two low neighbours point to the gasket.' }),
  example: 'steelyard 1\nfinding low "Cylinder 3 low"\n  compression «150 148 112 145 psi»\n',
};

export const vinShape: Rule<{ readonly length: number; readonly character: boolean }> = {
  code: 'vin-shape', family: 'shape', severity: 'warning', title: 'Not the shape of a VIN',
  message: ({ length, character }) => ({ what: character ? 'A VIN has no I, O or Q, and only capital letters and digits.' : `A VIN has 17 characters; this has ${length}.`, why: 'Recalls, parts and a used engine’s fit are looked up by it. Vehicles built before 1981 may have another form.', instead: 'Read it again from the vehicle; 1 and 0 are often taken for I and O.' }),
  example: 'steelyard 1\nvehicle "Van"\n  vin «1M8GDM9AXKP04278»\n',
};

export const vinCheck: Rule<{ readonly shows: string; readonly should: string; readonly northAmerican: boolean }> = {
  code: 'vin-check', family: 'shape', severity: 'warning', title: 'A VIN whose check digit does not hold',
  message: ({ shows, should, northAmerican }) => ({
    what: `Its ninth character is ${shows}; worked out from the others it would be ${should}.`,
    why: northAmerican ? 'Vehicles for North America carry this check digit (49 CFR 565.15), so one character is probably misread.' : 'ISO 3779 does not require the check digit, so this may well be right; in North America it would be a misreading.',
    instead: 'Compare it with the vehicle, character by character.',
  }),
  example: 'steelyard 1\nvehicle "Van"\n  vin «1M8GDM9A1KP042788»\n',
};
