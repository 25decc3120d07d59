import type { Rule } from '../../language/index.js';
import type { CautionTopic, Source } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { lineFor } from './lacking.js';
import { factBelow } from './lines.js';
import type { OptionView } from './view.js';

/** Common practice: the quote carries the cautions that belong to the work chosen. */
const cautionMissing: Rule<{ readonly work: string; readonly option: string; readonly cautions: readonly CautionTopic[] }> = {
  code: 'caution-missing', family: 'job', severity: 'warning', title: 'Work without its caution',
  message: ({ work, option, cautions }) => ({
    what: `“${clip(work)}” in option ${clip(option)} carries no caution about ${cautions.join(', ')}.`,
    why: 'Somebody can be hurt by this work, and the printed quote says only what is written here.',
    instead: `Add below it: caution ${cautions.join(', ')}.`,
  }),
  fix: ({ cautions }, at) => ({ title: `Add caution ${cautions.join(', ')}`, ...factBelow(at, 'caution', cautions.join(', ')) }),
  example: example({ lines: '«access out "Engine lifted out"»\n  remove 6 h\n  refit 7 h\n  caution fuel\npart coolant "Coolant" 40.00 new\nlabour seal "Rear seal" 2 h with out\n  because seen\n  uses coolant\n', one: '  do seal\n' }),
};

export const cautionCheck = optionCheck(cautionMissing, function* find(one) {
  const engine = lineFor('engine-out')(one);
  const gas = lineFor('refrigerant')(one);
  const lifted = engine === undefined ? [] : missing(one, ['lifting', 'fuel']);
  const refrigerant = gas === undefined ? [] : missing(one, ['refrigerant']);
  if (engine !== undefined && lifted.length + refrigerant.length > 0 && belongs(engine, gas, one)) {
    yield say(engine, one, [...lifted, ...refrigerant]);
    return;
  }
  if (engine !== undefined && lifted.length > 0) yield say(engine, one, lifted);
  if (gas !== undefined && refrigerant.length > 0) yield say(carrier(gas, one), one, refrigerant);
});

function missing({ weighed }: OptionView, cautions: readonly CautionTopic[]): CautionTopic[] {
  return cautions.filter((caution) => !weighed.cautions.includes(caution));
}

function say(line: Source, one: OptionView, cautions: readonly CautionTopic[]) {
  return found(cautionMissing, one.placeOf(line), { work: line.record.title?.text ?? '', option: one.option.name, cautions });
}

/** Whether the refrigerant is recovered as part of the way in, so that one caution line does for both. */
function belongs(engine: Source, gas: Source | undefined, { weighed }: OptionView): boolean {
  return gas === undefined || weighed.planned.chosen.paid.some((way) => way === engine && [...way.sublets, ...way.parts].some((goods) => goods === gas));
}

/** The line that can carry a caution: outside work and parts can't, so their way in or the option does. */
function carrier(gas: Source, { option, weighed }: OptionView): Source {
  const way = weighed.planned.chosen.paid.find((one) => [...one.sublets, ...one.parts].some((goods) => goods === gas));
  return way ?? (option.labour.some((job) => job === gas) ? gas : option);
}
