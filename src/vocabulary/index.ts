/** What may be said: one zod record for each kind. Everything that describes the language reads this room. */
export { Decimal, hundred, one, zero } from './decimal.js';
export type { Dimension, Unit } from './units.js';
export { units, unitsOf } from './units.js';
export type { Amount, Choice, DateValue, Name, Readings, Text, ValueType } from './value.js';
export type { Field, Fields, Kind } from './kind.js';
export type { ReadBlock, Record, RecordOf } from './record.js';
export { childrenOf, is } from './record.js';
export { readBlock } from './read.js';
export { recordJson } from './json.js';
export { allKinds, fileKinds, kindsThatKnow } from './vocabulary.js';
export { cautionTopics, partConditions } from './words.js';
export { isDate } from './values.js';
export { closest } from './spelling.js';
export { clip } from './value-rules.js';
export { formatVersion } from './kinds/format.js';
export * as kinds from './kinds/index.js';
export * as readRules from './read-rules.js';
export * as valueRules from './value-rules.js';
