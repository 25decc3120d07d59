/** Resolves shared files and names into a typed, immutable estimate in which every value knows its place. */
export type * from './types.js';
export type { Currency } from './currency.js';
export { currencyCodes, currencyOf, unnamedCurrency } from './currency.js';
export type { Sources } from './files.js';
export { fileLimits } from './files.js';
export { resolve, type Resolved } from './resolve.js';
export { bring, withNeeded } from './brought.js';
export { Scope, referencesOf, type NamedKind } from './scope.js';
export { monthsIn } from './months.js';
export { MOST_FINDS } from './build-decision.js';
export { AS_IT_STANDS } from './as-it-stands.js';
export { readVin, type VinReading } from './vin.js';
export * as fileRules from './file-rules.js';
export * as nameRules from './name-rules.js';
export * as moneyRules from './money-rules.js';
export * as workRules from './work-rules.js';
export * as decisionRules from './decision-rules.js';
