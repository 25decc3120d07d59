import { sentence, type Problem } from '../language/index.js';
import type { Diagnostic, Place } from './types.js';

/** The one place where problems get file offsets. */
export function toDiagnostic(problem: Problem, place: (span: Problem['at']) => Place | undefined): Diagnostic | undefined {
  const at = place(problem.at);
  if (at === undefined) return undefined;
  const related = problem.related === undefined ? undefined : place(problem.related.at);
  const fixAt = problem.fix === undefined ? undefined : place(problem.fix.at);
  return {
    uri: at.uri,
    range: at.range,
    code: problem.code,
    severity: problem.severity,
    message: problem.message,
    text: sentence(problem.message),
    related: problem.related === undefined || related === undefined ? undefined : { place: related, says: problem.related.says },
    href: `schemas/manual.md#${problem.code}`,
    data: 'data' in problem ? problem.data : undefined,
    fix: problem.fix === undefined || fixAt === undefined ? undefined : { title: problem.fix.title, place: fixAt, text: problem.fix.text },
  };
}
