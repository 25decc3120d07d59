import type { Decision, InspectionWeighed } from '../../weigh/index.js';
import { coveredSentence, inspectionSentence, shareText, unreadSentence } from '../decision-words.js';
import { titled, type DecisionView } from './decided.js';
import { flipsDrawing } from './drawings.js';
import { coverageId, flipId, inspectionId } from './decision-targets.js';
import { NEAREST } from './flip-rows.js';
import { html, type Html } from './html.js';
import { trialField } from './trial-field.js';

/** The figures that are worth reading twice. */
export function whatFlips({ decision: { flips, comparison }, flips: rows }: DecisionView): Html | undefined {
  if (rows.length === 0) return undefined;
  const near = flips.slice(0, NEAREST);
  return titled('flips', 'What would change the choice', [
    flipsDrawing(near, comparison.money) ?? html``,
    html`<ul class="sentences flip-rows">${rows.map(({ says, field }, i) => html`<li data-key="${flipId(i)}"><button type="button" data-figure="${flipId(i)}">${says}</button>${field === undefined ? undefined : trialField(field)}</li>`)}</ul>`,
  ]);
}

/** Whether to look further before deciding, and what each result would mean. */
export function lookFirst({ decision }: DecisionView): Html | undefined {
  const { inspections, unread, comparison } = decision;
  if (inspections.length + unread.length === 0) return undefined;
  return titled('inspect', 'Before deciding', sentences([
    ...inspections.map((one, i) => [inspectionId(i), inspectionSentence(one, comparison), results(one, decision)] as const),
    ...unread.map((one, i) => [inspectionId(inspections.length + i), unreadSentence(one)] as const),
  ]));
}

/** Whether somebody else pays, as far as what is written tells. */
export function coverage({ decision: { coverages } }: DecisionView): Html | undefined {
  if (coverages.length === 0) return undefined;
  return titled('coverage', 'Coverage', sentences(coverages.map((covered, i) => [coverageId(i), coveredSentence(covered)])));
}

function results({ results: all }: InspectionWeighed, { options }: Decision): string {
  const titleOf = (name: string) => options.find(({ weighed }) => weighed.option.name === name)?.weighed.option.title ?? name;
  return all.filter(({ choose }) => choose !== undefined).map(({ shows, chance, choose = '' }) =>
    `If it shows ${shows.length === 0 ? 'nothing' : shows.map((one) => `“${one}”`).join(' and ')} (${shareText(chance)}): ${titleOf(choose)}.`).join(' ');
}

/** Sentences that each lead to their line. */
export function sentences(list: readonly (readonly [id: string, says: string, more?: string])[]): Html {
  return html`<ul class="sentences">${list.map(([id, says, more]) => html`<li data-key="${id}"><button type="button" data-figure="${id}">${says}</button>${more === undefined ? undefined : html` <span class="said">${more}</span>`}</li>`)}</ul>`;
}
