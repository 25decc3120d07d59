import type { Rule } from '../../language/index.js';
import { clip, type Topic } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { debrisFinding } from './debris.js';
import { example } from './example.js';

const PLACES: readonly (readonly [Topic, string])[] = [['oil-pan', 'the oil pan'], ['oil-pickup', 'the pickup'], ['oil-cooler', 'the oil cooler']];

/** Common practice: debris is followed to where it settles. The cooler is not part of another engine, so it stays a risk. */
export const debrisNotFollowed: Rule<{ readonly option: string; readonly places: readonly string[]; readonly topics: readonly Topic[] }> = {
  code: 'debris-not-followed', family: 'job', severity: 'warning', title: 'Debris in the oil that is not followed up',
  message: ({ option, places }) => ({
    what: `There was debris in the oil, and option ${clip(option)} does nothing about ${places.join(', ')}.`,
    why: 'What has settled there is washed back into the bearings as soon as the engine runs.',
    instead: 'Add that work, or say counts as with its topic on the line that has it, such as counts as oil-cooler.',
  }),
  example: example({ lines: 'finding bits "Bits of sealant in the pan"\n  debris non-magnetic\nlabour pan "Oil pan and pickup: clean" 3 h\n  because seen, bits\n', one: '  do pan\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const debrisCheck = optionCheck(debrisNotFollowed, function* find(one, view) {
  const debris = debrisFinding(view);
  if (debris === undefined || !one.repairs) return;
  const missing = PLACES.filter(([topic]) => !one.has(topic) && (!one.swaps || topic === 'oil-cooler'));
  if (missing.length === 0) return;
  yield found(debrisNotFollowed, one.option.at, { option: one.option.name, places: missing.map(([, says]) => says), topics: missing.map(([topic]) => topic) }, { at: debris.at, says: 'The debris' });
});
