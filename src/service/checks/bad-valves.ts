import type { Source } from '../../estimate/index.js';
import { lineFor } from './lacking.js';
import type { OptionView, View } from './view.js';
import { workFindings } from './work-findings.js';

const BAD_VALVE = /\bvalves?\b.*\b(bent|burnt|burned|broken|struck)\b|\b(bent|burnt|burned|broken|struck)\b.*\bvalves?\b/i;

/** The line that takes off a head of which the valves are mended: some are replaced, or a finding calls them bent or burnt. */
export function badValves(one: OptionView, view: View): Source | undefined {
  const bad = one.has('valves') || workFindings(one, view).some(({ title }) => BAD_VALVE.test(title));
  return bad ? headOff(one) : undefined;
}

const headOff = lineFor('head-off');
