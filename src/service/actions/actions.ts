import type { Range } from '../../language/index.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';

export function actionsAt(uri: string, range: Range, context: FeatureContext, diagnostics: ReadonlyMap<string, readonly Diagnostic[]>): readonly Action[] {
  void [uri, range, context, diagnostics];
  return [];
}
