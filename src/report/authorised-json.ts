import type { State } from '../estimate/index.js';
import { authorisedIn, type Comparison } from '../weigh/index.js';
import { authorisedSentence } from './authorised-words.js';
import type { JsonWriter } from './json-writer.js';
import type { WeighReport } from './weigh-schema.js';

/** What is authorised beside what it comes to today, as data. */
export function authorisedJson(comparison: Comparison, { points, at }: JsonWriter): WeighReport['authorised'] {
  return authorisedIn(comparison).map((one) => {
    const { authorised: { on, by, how, version, record }, of, complete, mustAsk, against } = one;
    return {
      for: of.name,
      title: of.title,
      on: on ?? null,
      by: by ?? null,
      how: how ?? null,
      version: version ?? null,
      earlier: one.earlier.length,
      complete,
      amount: points(one.amount),
      against: against === 'nothing' ? null : against,
      total: points(one.total),
      over: points(one.over),
      room: points(one.room),
      roomUsed: points(one.used),
      roomLeft: points(one.left),
      aboveRoom: points(one.beyond),
      since: against === 'today' ? (one.since?.name ?? null) : null,
      mustAsk: complete && one.since === undefined && against === 'today' ? mustAsk : null,
      sentence: authorisedSentence(one, comparison.money),
      ...at(record.at),
    };
  });
}

export function stateJson({ state, since, option, validUntil }: State, today: string): NonNullable<WeighReport['state']> {
  return { state, since: since ?? null, option: option ?? null, validUntil: validUntil ?? null, asOf: today };
}
