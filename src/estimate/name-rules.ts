import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const article = (kind: string) => (/^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`);

/** The word that pins the engine in its place. */
export const IN_CAR = 'in-car';

export const nameTaken: Rule<{ readonly kind: string; readonly name: string }> = {
  code: 'name-taken', family: 'names', severity: 'error', title: 'Two lines with one name',
  message: ({ kind, name }) => ({ what: `There is already ${article(kind)} line called ${clip(name)}.`, why: 'A line that names it could mean either; the first one is used.', instead: 'Give one of them another name.' }),
  example: 'steelyard 1\npart pump "Coolant pump" 64.30 new\npart «pump» "Coolant pump, other make" 51.00 aftermarket\n',
};

export const unknownName: Rule<{ readonly name: string; readonly kinds: readonly string[]; readonly meant: string | undefined; readonly isA: string | undefined; readonly goesBehind: string | undefined }> = {
  code: 'unknown-name', family: 'names', severity: 'error', title: 'A name that nothing has',
  message: ({ name, kinds, meant, isA, goesBehind }) => ({
    what: isA === undefined ? `There is no ${kinds.join(' or ')} called ${clip(name)}.` : `${clip(name)} is the name of ${article(isA)} line, but ${kinds.map(article).join(' or ')} line is needed here.`,
    why: 'What it stands for is not counted.',
    instead: meant !== undefined ? `Did you mean ${meant}?` : goesBehind !== undefined ? `It goes behind ${goesBehind}: ${goesBehind} ${clip(name)}` : isA !== undefined ? `Write the name of ${kinds.map(article).join(' or ')} line, such as one that has to do with it.` : name === IN_CAR ? 'Work in the car takes no way in: leave with out, as in takes 5 h' : `Correct the name, or add a line: ${kinds[0] ?? ''} ${clip(name)} "Title"`,
  }),
  fix: ({ meant }, at) => (meant === undefined ? undefined : { title: `Write ${meant}`, at, text: meant }),
  example: 'steelyard 1\npart pump "Coolant pump" 64.30 new\noption repair "Replace the pump"\n  fit «pmup»\n',
};

export const reservedName: Rule<undefined> = {
  code: 'reserved-name', family: 'names', severity: 'error', title: 'A name that has a meaning already',
  message: () => ({ what: `${IN_CAR} says already that the engine stays in its place.`, why: 'A way in of that name could never be pinned, and work in the car takes no way in.', instead: 'Give the way in another name; for work in the car leave with out, as in takes 5 h' }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\naccess «in-car» "Engine raised"\n  remove 1 h\n',
};

export const ambiguousName: Rule<{ readonly name: string; readonly kinds: readonly string[] }> = {
  code: 'ambiguous-name', family: 'names', severity: 'error', title: 'A name that could mean two things',
  message: ({ name, kinds }) => ({ what: `${clip(name)} is the name of ${kinds.map(article).join(' and of ')}.`, why: 'Here either could be meant; the first is used.', instead: 'Give one of them another name.' }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\npart head "Bare head" 690.00 used\nsublet head "Head work" 310.00\nlabour fit-head "Fit the head" 2 h\n  uses «head»\n',
};

export const circular: Rule<{ readonly chain: readonly string[]; readonly word: string }> = {
  code: 'circular', family: 'names', severity: 'error', title: 'Lines that need each other',
  message: ({ chain, word }) => ({ what: `These lines go round in a circle: ${chain.join(' → ')}.`, why: 'What needs itself can never be started; the last step is left out.', instead: `Remove one of the ${word} lines.` }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\naccess lifted "Engine lifted"\n  remove 1 h\n  includes out\naccess out "Engine out"\n  remove 6 h\n  includes «lifted»\n',
};

export const tooMuchBehind: Rule<{ readonly word: string; readonly most: number }> = {
  code: 'too-much-behind', family: 'names', severity: 'error', title: 'A line that rests on too many others',
  message: ({ word, most }) => ({ what: `With this name, more than ${most} lines stand behind this one through ${word}.`, why: 'It is left out with all that follows it, so the totals that rest on this line are too low.', instead: `Name fewer lines behind ${word}, or put what always goes together into one line.` }),
  example: `steelyard 1\nshop "S"\n  rate bench 100.00\n${Array.from({ length: 42 }, (_, i) => `access way-${i + 1} "Way in ${i + 1}"\n  remove 1 h${i === 0 ? '' : `\n  includes ${i === 41 ? '«way-41»' : `way-${i}`}`}`).join('\n')}\n`,
};

/** How several are written on the line that a word names. */
const severalSuchAs: Readonly<Record<string, string>> = { do: 'labour plane "Plane a head" 2 at 1.5 h', fit: 'part shim "Shim" 2 at 4.20', send: 'sublet plane "Plane a head" 2 at 45.00', charge: 'fee storage "Storage" 2 d at 25.00' };

export const saidBefore: Rule<{ readonly name: string; readonly word: string }> = {
  code: 'said-before', family: 'names', severity: 'warning', title: 'One name twice in an option',
  message: ({ name, word }) => ({ what: `${clip(name)} stands behind ${word} twice.`, why: `It is charged once in an option, however often it is named; if it is really ${word === 'do' ? 'done' : 'needed'} twice, the total is too low.`, instead: `Remove one, or write how many on its own line, as in ${severalSuchAs[word] ?? '2 at 45.00'}.` }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\nlabour pump "Replace the pump" 2 h\noption repair "Replace the pump"\n  do pump\n  do «pump»\n',
};

export const onlyOnce: Rule<{ readonly kind: string; readonly of?: string }> = {
  code: 'only-once', family: 'names', severity: 'error', title: 'A line that may stand only once',
  message: ({ kind, of }) => ({ what: `There is already ${article(kind)} line${of === undefined ? '' : ` for ${of}`}.`, why: 'Only one can hold; the first is used.', instead: 'Remove the one that is wrong.' }),
  example: 'steelyard 1\nvehicle "Van"\n«vehicle "Another van"»\n',
};
