import type { Finding } from '../../estimate/index.js';
import type { OptionView, View } from './view.js';

/** Whether an option repairs the engine and leaves it in: what wore it is still there. */
export function keepsEngine(one: OptionView): boolean {
  return one.repairs && !one.swaps;
}

/** The finding of debris that counts: iron before anything else. */
export function debrisFinding({ estimate }: View): Finding | undefined {
  return estimate.findings.find(({ debris }) => debris === 'magnetic') ?? estimate.findings.find(({ debris }) => debris === 'non-magnetic');
}
