import { findingUnanswered } from '../checks/finding-unanswered.js';
import { workWithoutFinding } from '../checks/work-without-finding.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';
import { actionOf, nameBehind } from './edits.js';

/** More than these would be a list to read, not a fix. */
const MOST_OFFERED = 3;

/** Lets work rest on a finding that nothing answers yet: work without a finding first. */
export function answerFinding({ code, uri, data }: Diagnostic, context: FeatureContext): readonly (Action | undefined)[] {
  if (code !== findingUnanswered.code) return [];
  const { name } = data as { readonly name: string | undefined };
  if (name === undefined) return [];
  const { labour } = context.weighing(uri).resolved.estimate;
  const own = labour.filter(({ record }) => record.block.uri === uri).sort((a, b) => a.because.length - b.because.length);
  return own.slice(0, MOST_OFFERED).map((job) => actionOf(`${job.name ?? job.title} rests on it: because ${name}`, code, [nameBehind(job.record, 'because', name)], context));
}

/** Lets an option rest on a finding. */
export function nameFinding({ code, uri, data }: Diagnostic, context: FeatureContext): readonly (Action | undefined)[] {
  if (code !== workWithoutFinding.code) return [];
  const { options, findings } = context.weighing(uri).resolved.estimate;
  const option = options.find((one) => one.name === (data as { readonly option: string }).option);
  if (option === undefined) return [];
  return findings.filter(({ name }) => name !== undefined).slice(0, MOST_OFFERED).map(({ name = '' }) => actionOf(`It rests on ${name}: because ${name}`, code, [nameBehind(option.record, 'because', name)], context));
}
