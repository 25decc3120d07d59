/** The comparison as a page: pure functions from a comparison to markup in which every text is escaped. */
export { comparisonPage } from './comparison-page.js';
export { keepLastGood, type Column } from './last-good.js';
export { targetsOf, type Targets } from './targets.js';
export type { LineOf, PageView } from './cells.js';
