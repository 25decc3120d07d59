import { problem, type Problem } from '../language/index.js';
import { kinds, type Name, type RecordOf } from '../vocabulary/index.js';
import { bring, withNeeded } from './brought.js';
import { pick, type Lookup } from './lookup.js';
import { upToMost } from './most.js';
import type { Option, Stage, Staged } from './option-types.js';
import { rateFor } from './rate-for.js';
import { remember } from './remember.js';
import { reportRepeats } from './repeats.js';
import { sourceOf, titleOf } from './source.js';
import * as rules from './stage-rules.js';
import type { Access, Labour } from './work-types.js';

/** Builds a stage with all that its work brings along. */
export function buildStage(record: RecordOf<typeof kinds.stage>, lookup: Lookup): Stage | undefined {
  const { values, name } = record;
  const title = titleOf(record);
  if (name === undefined || title === undefined) return undefined;
  const labour = withNeeded(pick(values.do, lookup.labour));
  const opens = pick(values.opens, lookup.access);
  const destroys = pick(values.destroys, lookup.part);
  return remember(record, [lookup.shop, ...labour, ...opens, ...destroys], lookup.problems, (problems) => {
    for (const key of ['do', 'opens', 'destroys'] as const) reportRepeats(values[key] ?? [], key, problems);
    const says = values.do !== undefined || values.opens !== undefined;
    if (!record.broken && !says) problems.push(problem(rules.stageEmpty, record.at, undefined));
    if (!record.broken && values.do !== undefined && values.putBack === undefined) problems.push(problem(rules.stageWithoutPutBack, record.at, undefined));
    for (const way of opens) if (way.remove === undefined && !way.broken) problems.push(problem(rules.stageOpensFree, atName(values.opens, way, record), { way: way.name }));
    reportOutOfReach(record, labour, opens, problems);
    const { parts, sublets } = bring(labour);
    return {
      ...sourceOf(record),
      name: name.name,
      title,
      labour: upToMost(labour, 'jobs', record, problems),
      parts: upToMost(parts, 'parts', record, problems),
      sublets: upToMost(sublets, 'pieces of outside work', record, problems),
      opens,
      putBack: values.putBack,
      rate: values.putBack === undefined ? undefined : rateFor(values.class, values.putBack.at, { ...lookup, problems }),
      destroys,
    };
  });
}

function atName(names: readonly Name[] | undefined, { name }: { readonly name: string | undefined }, record: RecordOf<typeof kinds.stage>): Name['at'] {
  return names?.find((one) => one.name === name)?.at ?? record.at;
}

/** Silent where what can't be read, or a name that nothing has, may be what is missing: that has its message. */
function reportOutOfReach(record: RecordOf<typeof kinds.stage>, labour: readonly Labour[], opens: readonly Access[], problems: Problem[]): void {
  const named = new Set(record.values.opens?.map(({ name }) => name));
  if (record.broken || named.size > opens.length) return;
  const open = new Set(opens.flatMap((way) => [way, ...way.includes]));
  for (const job of labour) {
    if (job.modes.length === 0 || isUnsure(job) || job.modes.some((mode) => mode.with.every((way) => open.has(way)))) continue;
    const takes = job.modes.map((mode) => mode.with.map((way) => way.name).join(' and ')).join(', or ');
    problems.push(problem(rules.stageOutOfReach, atName(record.values.do, job, record), { job: job.title, takes }));
  }
}

/** A time of it could not be read, or names a way in that nothing has. */
function isUnsure({ broken, record, modes }: Labour): boolean {
  const times = record.children.filter(({ kind }) => kind === kinds.takes);
  return broken || times.some((line) => line.broken) || times.length > modes.length;
}

/** What all stages together put into every option: each thing once. */
export function stagedBy(stages: readonly Stage[], then: Staged['then']): Staged | undefined {
  if (stages.length === 0) return undefined;
  return { labour: withNeeded(stages.flatMap((stage) => stage.labour)), ways: [...new Set(stages.flatMap((stage) => stage.opens))], then };
}

/** What only shows when stages are seen beside each other and beside the options. */
export function checkStages(stages: readonly Stage[], options: readonly Option[], problems: Problem[]): void {
  const first = new Map<object, Stage>();
  for (const stage of stages) {
    const { values } = stage.record as RecordOf<typeof kinds.stage>;
    for (const [does, names, things] of [['work', values.do, stage.labour], ['way', values.opens, stage.opens]] as const) {
      for (const thing of things) {
        const before = first.get(thing);
        if (before === undefined) first.set(thing, stage);
        else problems.push(problem(rules.stageTwice, atName(names, thing, stage.record as RecordOf<typeof kinds.stage>), { what: thing.title, stage: before.name, does }, { at: before.at, says: 'The first one' }));
      }
    }
  }
  for (const { name, way, wayAt, at } of options) {
    if (way === undefined) continue;
    for (const stage of stages) {
      const ways = stage.opens.filter((one) => !way.includes(one)).map((one) => one.name);
      if (ways.length > 0) problems.push(problem(rules.pinLacksStage, wayAt ?? at, { option: name, ways, stage: stage.name }, { at: stage.at, says: 'The stage' }));
    }
  }
}
