/** The comparison as a page: pure functions from a comparison to markup in which every text is escaped. */
export { comparisonPage } from './comparison-page.js';
export { keepLastGood, type Column } from './last-good.js';
export { targetsOf, type Targets } from './targets.js';
export type { LineOf, PageView, PictureSource } from './cells.js';
export { decisionStopped, pageFromBefore, pageOfNothing } from './stopped.js';
export { decisionPart } from './decision-part.js';
export { decisionView } from './decided.js';
export type { FlipRow } from './flip-rows.js';
export type { Trying } from './trying-banner.js';
export { writtenFigure, type TrialField } from './trial-field.js';
export { derivationFields, derivationsOf, derivationTargets, type Derivations, type Tried } from './derivations.js';
export { decisionTargets } from './decision-targets.js';
export { closingTargets } from './closing-part.js';
