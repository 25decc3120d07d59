/** Findings and changes as a SARIF 2.1.0 log, for build servers. */
export { sarifLog, type SarifFinding, type SarifPlace } from './log.js';
export { changesSarif } from './changes-sarif.js';
export type { SarifFile } from './artifacts.js';
export type { SarifRule } from './rules.js';
export type { SarifLog } from './types.js';
