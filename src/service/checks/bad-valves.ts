import type { OptionView, View } from './view.js';
import { workFindings } from './work-findings.js';

const BAD_VALVE = /\bvalves?\b.*\b(bent|burnt|burned|broken|struck)\b|\b(bent|burnt|burned|broken|struck)\b.*\bvalves?\b/i;

/** Whether an option mends valves: it replaces some, or rests on a finding that calls them bent or burnt. */
export function hasBadValves(one: OptionView, view: View): boolean {
  return one.has('valves') || workFindings(one, view).some(({ title }) => BAD_VALVE.test(title));
}
