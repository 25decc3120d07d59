/** One facade over all rooms to the left: documents in, plain data out. Editor, terminal and tests go through it. */
export { createLanguageService, type LanguageService, type Place, type ServiceHost, type Weighing } from './service.js';
export type { Diagnostic } from './diagnostics.js';
export type { Hover } from './hover.js';
export { resolveWithin } from './paths.js';
export { allRules } from './registry.js';
