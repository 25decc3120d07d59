import { stateOf } from '../estimate/index.js';
import type { Decided, Decision, Plan } from '../weigh/index.js';
import { authorisedJson, stateJson } from './authorised-json.js';
import { cautionLines, estimateNotice } from './cautions.js';
import { calendarJson, coverageJson, flipJson, inspectionJson, monthlyJson, riskJson, shopJson } from './decision-json.js';
import { decisionVerdict } from './decision-verdict.js';
import { figureNames, figureOf, lineId, type FigureName } from './figures.js';
import { writer, type JsonWriter, type PlaceOf } from './json-writer.js';
import { lineJson } from './line-json.js';
import { afterStagesJson, stagesJson } from './stage-json.js';
import { warrantyText } from './warranty.js';
import type { WeighReport } from './weigh-schema.js';

type JsonOption = WeighReport['options'][number];

/** All that is known of an estimate as plain data, in the form that `weighReport` describes; its state as of a day (YYYY-MM-DD). */
export function weighJson(decision: Decision, placeOf: PlaceOf, today?: string): WeighReport {
  const { comparison } = decision;
  const { estimate, options, ranking, money } = comparison;
  const write = writer(money, placeOf);
  return {
    steelyard: 1,
    report: 'weigh',
    title: estimate.header?.title ?? null,
    vehicle: estimate.vehicle?.title ?? null,
    currency: { code: money.currency.code === '' ? null : money.currency.code, digits: money.currency.digits },
    verdict: decisionVerdict(decision),
    pick: ranking[0]?.option.name ?? null,
    state: today === undefined ? null : stateJson(stateOf(estimate, today), today),
    authorised: authorisedJson(comparison, write),
    ...stagesJson(comparison, write),
    options: decision.options.map((one) => optionJson(one, decision, write)),
    flips: decision.flips.map((flip) => flipJson(flip, money, write)),
    flipsBeyond: [...decision.beyond],
    inspections: decision.inspections.map((one) => inspectionJson(one, decision.comparison, write)),
    coverages: decision.coverages.map((one) => coverageJson(one, write)),
    cautions: [...estimateNotice, ...cautionLines(options.flatMap((one) => one.cautions))],
  };
}

function optionJson(decided: Decided, { comparison, cases }: Decision, write: JsonWriter): JsonOption {
  const { weighed, downtime } = decided;
  const { ranking, money } = comparison;
  const { points } = write;
  const planJson = (one: Plan) => ({ ways: one.paid.map((way) => way.name), total: one.money.toFixed(money.currency.digits), hours: one.hours.toFixed() });
  const { planned, returns, option: { name, title, written, way, ruledOutBy } } = weighed;
  const rank = ranking.indexOf(weighed);
  const figures = (Object.keys(figureNames) as FigureName[]).flatMap((key) => {
    const found = figureOf(weighed, key);
    return found === undefined ? [] : [[key, points(found)] as const];
  });
  return {
    name,
    title,
    written,
    warranty: warrantyText(weighed.option) ?? null,
    complete: weighed.complete,
    ruledOut: ruledOutBy.map((one) => one.title),
    rank: rank < 0 ? null : rank + 1,
    figures: Object.fromEntries(figures),
    calendar: calendarJson(weighed, write),
    average: write.amount(decided.average),
    risk: riskJson(decided.risk, cases, write),
    monthly: monthlyJson(decided.monthly, write),
    downtime: downtime === undefined ? null : points(downtime),
    ways: { pinned: way !== undefined, chosen: planJson(planned.chosen), others: planned.others.map(planJson), unpinned: planned.unpinned === undefined ? null : planJson(planned.unpinned) },
    open: weighed.open.map((one) => ({ job: one.job.name ?? '', title: one.job.title, now: points(one.now), alone: points(one.alone), saved: points(one.saved) })),
    cores: returns.cores.map((core) => ({ title: core.part.title, charge: points(core.charge), refund: points(core.refund), taxBack: points(core.taxBack), taxKept: points(core.taxKept), deadline: core.deadline ?? null, late: core.late })),
    ...afterStagesJson(weighed, comparison, write),
    lines: weighed.totals.lines.map((one, i) => lineJson(one, lineId(weighed, i), write)),
    shopOnly: shopJson(decided, money, write),
  };
}
