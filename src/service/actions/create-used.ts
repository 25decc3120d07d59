import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import { missingFile } from '../missing-file.js';
import type { Diagnostic } from '../types.js';

/** A shop to begin with: every figure is a place to fill in. */
const SHOP = `steelyard 1

# What every estimate of the shop shares. These figures are only examples: write your own.

shop "Our shop"
  workday      8 h
  technicians  1
  closed       saturday, sunday

  rate mechanical "Mechanical"  100.00  usual

  markup 40%                       # on parts that have a cost

  tax sales "Sales tax" 0%  on parts, fees  by invoice

  fee supplies "Shop supplies" 5% of labour  cap 40.00
`;

/** Makes the shared file that a use line names and that is not there. */
export function createUsed(diagnostic: Diagnostic, context: FeatureContext): readonly Action[] {
  const missing = missingFile(diagnostic, context);
  if (missing === undefined || missing.why !== undefined || !missing.path.endsWith('.yard')) return [];
  return [{ title: `Create ${missing.path} with a shop to fill in`, kind: 'fix', code: diagnostic.code, edits: new Map(), creates: { uri: missing.target, text: SHOP } }];
}
