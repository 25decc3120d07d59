import { problem, type Problem } from '../language/index.js';
import { childrenOf, hundred, kinds, type RecordOf } from '../vocabulary/index.js';
import * as rules from './decision-rules.js';
import type { Lookup } from './lookup.js';
import { onlyOnce } from './name-rules.js';
import type { Coverage, Finds, Inspection } from './option-types.js';
import { rateFor } from './rate-for.js';
import { remember } from './remember.js';
import * as sense from './sense-rules.js';
import { sourceOf, titleOf } from './source.js';
import type { Chance } from './work-types.js';

/** What one inspection may tell apart: as many results as can still be read, two for each more. */
const MOST_FINDS = 6;

/** Builds an inspection with the chances that it tells apart. */
export function buildInspection(record: RecordOf<typeof kinds.inspect>, lookup: Lookup, chanceNamed: (name: string) => Chance | undefined): Inspection | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  const lines = childrenOf(record, kinds.finds);
  const chances = lines.map((line) => (line.values.chance === undefined ? undefined : chanceNamed(line.values.chance.name)));
  return remember(record, [lookup.shop, ...chances], lookup.problems, (problems) => {
    if (lines.length === 0 && !record.broken) problems.push(problem(rules.inspectFindsNothing, record.at, undefined));
    if (values.price === undefined && values.hours === undefined && !record.broken) problems.push(problem(sense.inspectForNothing, record.at, undefined));
    if (lines.length > MOST_FINDS) problems.push(problem(rules.tooManyFinds, (lines[MOST_FINDS] as (typeof lines)[0]).at, { most: MOST_FINDS }));
    return {
      ...sourceOf(record),
      name: name.name,
      title,
      price: values.price,
      hours: values.hours,
      rate: values.hours === undefined ? undefined : rateFor(values.class, values.hours.at, { ...lookup, problems }),
      finds: findsOf(lines.slice(0, MOST_FINDS), chances, problems),
    };
  });
}

function findsOf(lines: readonly RecordOf<typeof kinds.finds>[], chances: readonly (Chance | undefined)[], problems: Problem[]): Finds[] {
  const found: Finds[] = [];
  lines.forEach((line, i) => {
    const { chance: name, shows, wrongly } = line.values;
    const chance = chances[i];
    if (!line.broken && (name === undefined || shows === undefined)) {
      problems.push(problem(rules.percentMissing, line.at, { what: name === undefined ? 'which chance it looks for' : 'how often it shows it', example: 'finds cracked 90% wrongly 5%' }));
    }
    const over = [shows, wrongly].find((one) => one?.high.gt(hundred) === true);
    if (over !== undefined) problems.push(problem(rules.overHundred, over.at, { written: over.high.toFixed(), of: 'finds' }));
    for (const one of [shows, wrongly]) if (one !== undefined && over === undefined && !one.low.eq(one.high)) problems.push(problem(rules.chanceInThree, one.at, { likely: one.likely.toFixed() }));
    if (shows !== undefined && wrongly !== undefined && over === undefined && wrongly.likely.gte(shows.likely)) problems.push(problem(sense.wronglyAsOften, wrongly.at, { shows: shows.likely.toFixed(), wrongly: wrongly.likely.toFixed() }));
    if (chance === undefined || shows === undefined || over !== undefined) return;
    const twin = lines.findIndex((_, at) => chances[at] === chance);
    if (twin < i) problems.push(problem(onlyOnce, line.at, { kind: 'finds', of: name?.name ?? '' }, { at: (lines[twin] as (typeof lines)[0]).at, says: 'The first one' }));
    else found.push({ chance, shows, wrongly });
  });
  return found;
}

export function buildCoverage(record: RecordOf<typeof kinds.coverage>, problems: Problem[]): Coverage | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  return remember(record, [], problems, (own) => {
    const { builtFrom, builtTo } = values;
    if (builtFrom !== undefined && builtTo !== undefined && builtTo.iso.padEnd(10, '~') < builtFrom.iso) own.push(problem(rules.coverageBackwards, builtTo.at, { from: builtFrom.iso, to: builtTo.iso }));
    const says = builtFrom ?? builtTo ?? values.years ?? values.upTo ?? values.within ?? values.until;
    if (says === undefined && !record.broken) own.push(problem(rules.coverageOfEverything, record.at, undefined));
    return {
      ...sourceOf(record),
      name: record.name?.name,
      title,
      sort: values.sort?.word,
      builtFrom: builtFrom?.iso,
      builtTo: builtTo?.iso,
      years: (values.years ?? []).map((year) => year.likely.toNumber()),
      upTo: values.upTo,
      within: values.within,
      until: values.until?.iso,
      covers: (values.covers ?? []).map(({ name }) => name),
    };
  });
}
