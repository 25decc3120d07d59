import type { Rule } from '../../language/index.js';
import type { Finding } from '../../estimate/index.js';
import { clip, Decimal, hundred, type Record } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factsOf } from './record-facts.js';

/** Lowest reading at least this share of the best: TM 5-4210-230-14&P-1. */
const LEAST_SHARE = 75;

/** Common practice: the customer may ask what becomes of each thing that was found. */
export const findingUnanswered: Rule<{ readonly finding: string; readonly name: string | undefined }> = {
  code: 'finding-unanswered', family: 'job', severity: 'advice', title: 'A finding that nothing answers',
  message: ({ finding, name }) => ({
    what: `No work rests on “${clip(finding)}”, and it rules nothing out.`,
    why: 'Something was found, and no option says what becomes of it; the customer may ask.',
    instead: `Write because ${name ?? 'and its name'} below the work that answers it, or rules out below the finding.`,
  }),
  example: example({ lines: '«finding weeps "Coolant pump weeps"»\nlabour seal "Front seal" 2 h\n  because seen\n', one: '  do seal\n' }),
};

export const findingCheck = wholeCheck(findingUnanswered, function* find({ estimate, resolved, isOwn }) {
  const facts = factsOf(resolved);
  for (const one of estimate.findings) {
    if (!isOwn(one) || (one.name !== undefined && facts.names('finding', one.name)) || one.record.values['rulesOut'] !== undefined || isGoodNews(one)) continue;
    yield found(findingUnanswered, one.at, { finding: one.title, name: one.name });
  }
});

/** A measurement in which nothing is wrong needs no answer. */
function isGoodNews({ debris, compression, record }: Finding): boolean {
  if (says(record, 'noise') || says(record, 'fluid') || record.values['codes'] !== undefined || record.values['leakage'] !== undefined) return false;
  const even = compression === undefined ? undefined : Decimal.min(...compression.values).times(hundred).gte(Decimal.max(...compression.values).times(LEAST_SHARE));
  return (debris === 'none' && even !== false) || (even === true && debris === undefined);
}

function says(record: Record, key: string): boolean {
  const text = (record.values[key] as { readonly text: string } | undefined)?.text;
  return text !== undefined && text !== 'none';
}
