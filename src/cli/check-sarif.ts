import { sentence } from '../language/index.js';
import { sarifLog, type SarifFile, type SarifFinding, type SarifLog, type SarifPlace, type SarifRule } from '../report/sarif/index.js';
import { problemsOfExample, ruleByCode } from '../service/index.js';
import type { Found, FoundAt } from './found.js';

/** A check of the tool threw, or weighing: what it would have found is missing. */
const STUMBLED: ReadonlySet<string> = new Set(['check-failed', 'weighing-stopped']);

interface CheckOutcome {
  readonly version: string;
  readonly fine: boolean;
  /** True where files could not be read, so that findings may be missing. */
  readonly unread?: boolean;
}

/** What `steelyard check` found, as a SARIF log. */
export function checkSarif(asked: readonly string[], found: readonly Found[], { version, fine, unread = false }: CheckOutcome, fileOf: (uri: string) => SarifFile): SarifLog {
  const placeOf = ({ uri, place }: FoundAt): SarifPlace => ({ file: fileOf(uri), ...place });
  const findings = found.map(({ finding, at, related, fixAt, line }): SarifFinding => ({
    rule: finding.code,
    severity: finding.severity,
    text: sentence(finding),
    at: placeOf(at),
    words: line,
    related: related === undefined ? [] : [{ at: placeOf(related), says: related.says }],
    fix: finding.fix === undefined || fixAt === undefined ? undefined : { title: finding.fix.title, at: placeOf(fixAt), text: finding.fix.text },
  }));
  return sarifLog({ version, asked: asked.map(fileOf), findings, rule: ruleOf, exitCode: unread ? 2 : fine ? 0 : 1, successful: !unread && !found.some(({ finding }) => STUMBLED.has(finding.code)) });
}

/** A rule with what is said about its own example, which is worked out only for rules that something was found by. */
function ruleOf(id: string): SarifRule {
  const manual = `schemas/manual.md#${id}`;
  const rule = ruleByCode.get(id);
  if (rule === undefined) return { id, title: id, severity: 'warning', tags: [], manual, says: undefined, example: undefined };
  const example = rule.example.replace(/[«»]/g, '');
  const says = problemsOfExample(example).find(({ code }) => code === id)?.message;
  return { id, title: rule.title, severity: rule.severity, tags: [rule.family], manual, says, example };
}
