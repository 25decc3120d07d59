import type { Source } from '../../estimate/index.js';
import { NOTHING, recognized, type Choice, type Record, type Topic } from '../../vocabulary/index.js';

const kept = new WeakMap<Record, ReadonlySet<Topic>>();

/** What a line stands for: as it says itself behind `counts as`, or else as its title and name are recognized. */
export function topicsOf({ record }: Pick<Source, 'record'>): ReadonlySet<Topic> {
  let topics = kept.get(record);
  if (topics === undefined) {
    const said = record.values['countsAs'] as readonly Choice<Topic | typeof NOTHING>[] | undefined;
    topics = new Set(said === undefined ? recognized(record.kind.word, record.title?.text ?? '', record.name?.name) : said.flatMap(({ word }) => (word === NOTHING ? [] : [word])));
    kept.set(record, topics);
  }
  return topics;
}
