import { problem } from '../language/index.js';
import { childrenOf, kinds, type RecordOf } from '../vocabulary/index.js';
import { buildPart, buildSublet } from './build-goods.js';
import { pick, type Lookup, type Telling } from './lookup.js';
import { upToMost } from './most.js';
import { IN_CAR, reservedName } from './name-rules.js';
import { rateFor } from './rate-for.js';
import { remember } from './remember.js';
import type { Tool } from './shop-types.js';
import { titleOf } from './source.js';
import { usedGoods } from './used-goods.js';
import { wordsIn } from './words-in.js';
import * as rules from './work-rules.js';
import type { Access } from './work-types.js';

export function buildAccess(record: RecordOf<typeof kinds.access>, lookup: Lookup, includes: readonly Access[]): Access | undefined {
  const used = usedGoods(record.values.uses, lookup);
  const tools = pick(record.values.needs, lookup.tool);
  return remember(record, [lookup.shop, ...includes, ...used.parts, ...used.sublets, ...tools], lookup.problems, (problems) => makeAccess(record, { shop: lookup.shop, problems }, includes, used, tools));
}

function makeAccess(record: RecordOf<typeof kinds.access>, lookup: Telling, includes: readonly Access[], used: ReturnType<typeof usedGoods>, tools: readonly Tool[]): Access | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  if (name.name === IN_CAR) lookup.problems.push(problem(reservedName, name.at, undefined));
  const parts = [...used.parts, ...childrenOf(record, kinds.part).flatMap((child) => buildPart(child, lookup) ?? [])];
  const sublets = [...used.sublets, ...childrenOf(record, kinds.sublet).flatMap((child) => buildSublet(child, lookup) ?? [])];
  const hours = values.remove ?? values.refit;
  if (hours === undefined && parts.length === 0 && sublets.length === 0 && !record.broken) lookup.problems.push(problem(rules.accessEmpty, record.at, undefined));
  return {
    record, at: record.at, broken: record.broken,
    name: name.name,
    title,
    includes,
    remove: values.remove,
    refit: values.refit,
    rate: hours === undefined ? undefined : rateFor(values.class, hours.at, lookup),
    tools,
    parts: upToMost(parts, 'parts', record, lookup.problems),
    sublets: upToMost(sublets, 'pieces of outside work', record, lookup.problems),
    cautions: wordsIn(values.caution),
  };
}
