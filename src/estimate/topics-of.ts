import { Slot } from '../language/index.js';
import { heldByRecords, NOTHING, recognized, type Choice, type Topic } from '../vocabulary/index.js';
import type { Source } from './source.js';

const NO_TOPICS: ReadonlySet<Topic> = new Set();
const kept = new Slot<ReadonlySet<Topic>>(heldByRecords);

/** What a line stands for: as it says itself behind `counts as`, or else as its title and name are recognized. */
export function topicsOf({ record }: Pick<Source, 'record'>): ReadonlySet<Topic> {
  let topics = kept.get(record);
  if (topics === undefined) {
    const said = record.values['countsAs'] as readonly Choice<Topic | typeof NOTHING>[] | undefined;
    const found = said === undefined ? recognized(record.kind.word, record.title?.text ?? '', record.name?.name) : said.flatMap(({ word }) => (word === NOTHING ? [] : [word]));
    topics = found.length === 0 ? NO_TOPICS : new Set(found);
    kept.set(record, topics);
  }
  return topics;
}
