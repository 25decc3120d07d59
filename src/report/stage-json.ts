import { afterStages, authorisedIn, type Comparison, type StageWeighed, type Weighed } from '../weigh/index.js';
import type { JsonWriter } from './json-writer.js';
import { lineJson } from './line-json.js';
import { stageLineId } from './stage-figures.js';
import type { WeighReport } from './weigh-schema.js';

/** The stages of an estimate; nothing at all where it has none. */
export function stagesJson(comparison: Comparison, write: JsonWriter): Pick<WeighReport, 'stages'> {
  const { stages } = comparison;
  return stages.length === 0 ? {} : { stages: stages.map((one) => stageJson(one, comparison, write)) };
}

/** What of an option's total is authorised for stages. */
export function afterStagesJson(weighed: Weighed, comparison: Comparison, { points }: JsonWriter): Pick<WeighReport['options'][number], 'afterStages'> {
  const after = afterStages(comparison).get(weighed);
  return after === undefined ? {} : { afterStages: { authorised: points(after.authorised), left: points(after.left) } };
}

function stageJson(weighed: StageWeighed, comparison: Comparison, write: JsonWriter): NonNullable<WeighReport['stages']>[number] {
  const { stage, plan, totals, putBack, backHours, stop, backLines, complete } = weighed;
  const authorised = authorisedIn(comparison).find(({ of }) => of === stage);
  const { points } = write;
  return {
    name: stage.name,
    title: stage.title,
    ...write.at(stage.at),
    complete,
    total: points(totals.total),
    hours: points(totals.hours),
    putBack: points(putBack),
    backHours: points(backHours),
    stop: points(stop),
    authorised: authorised === undefined ? null : points(authorised.amount),
    ways: plan.paid.map(({ name }) => name),
    destroys: stage.destroys.map(({ title }) => title),
    lines: totals.lines.map((line, i) => lineJson(line, stageLineId(weighed, i), write)),
    backLines: backLines.map((line, i) => lineJson(line, stageLineId(weighed, totals.lines.length + i), write)),
  };
}
