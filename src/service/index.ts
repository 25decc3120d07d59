/** One facade over all rooms to the left: documents in, plain data out. Editor, terminal and tests go through it. */
export { createLanguageService } from './service.js';
export { sameProblem } from './diagnostics.js';
export { ProblemsByFile } from './problems-by-file.js';
export type { Diagnostic, LanguageService, Place, ServiceHost } from './types.js';
export { TRIAL_VALUE, writtenWith, type Trial } from './what-if.js';
export { changesBetween, type Side } from './changes.js';
export { withDefaults } from './complete/snippet.js';
export { resolveWithin } from './paths.js';
export { problemsOfExample } from './example.js';
export { allRules, ruleByCode } from './registry.js';
export type { Severities } from './checks/severities.js';
export type * from './feature-types.js';
