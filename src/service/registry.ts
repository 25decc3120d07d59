import { syntaxRules, type Rule } from '../language/index.js';
import { readRules, valueRules } from '../vocabulary/index.js';
import { authorisedRules, closedRules, decisionRules, fileRules, moneyRules, mostRules, nameRules, senseRules, stageRules, workRules } from '../estimate/index.js';
import * as allowRules from './checks/allow-rules.js';
import { estimateLineMissing } from './checks/estimate-line-missing.js';
import { allChecks } from './checks/index.js';

const FAMILIES = ['shape', 'names', 'job', 'money'];

/** Every rule there is, by family and code. The manual has a section for each, and its example is a test. */
export const allRules: readonly Rule<never>[] = [...[syntaxRules, readRules, valueRules, authorisedRules, fileRules, nameRules, moneyRules, workRules, stageRules, mostRules, decisionRules, closedRules, senseRules, allowRules]
  .flatMap((room) => Object.values(room) as unknown[])
  .filter(isRule), ...allChecks.map((check) => check.rule), estimateLineMissing]
  .sort((a, b) => order(a) - order(b) || (a.code < b.code ? -1 : 1));

export const ruleByCode: ReadonlyMap<string, Rule<never>> = new Map(allRules.map((rule) => [rule.code, rule]));

function order(rule: Rule<never>): number {
  return FAMILIES.indexOf(rule.family);
}

/** The rooms' rule files also hold small helpers of words. */
function isRule(value: unknown): value is Rule<never> {
  return typeof value === 'object' && value !== null && 'code' in value && 'message' in value;
}
