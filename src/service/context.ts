import type { Span, Tree } from '../language/index.js';
import type { Place, ServiceHost, Weighing } from './types.js';

/** What a language feature may ask of the service. */
export interface FeatureContext {
  readonly host: ServiceHost;
  /** The parsed file, or undefined where there is none or it is not read yet. */
  readonly tree: (uri: string) => Tree | undefined;
  readonly weighing: (uri: string) => Weighing;
  readonly place: (span: Span) => Place | undefined;
}
