import { sentence, type Problem } from '../language/index.js';
import { checkFailed } from './checks/failed.js';
import type { Diagnostic, Place } from './types.js';

/**
 * What tells one problem of a file from another: its code and place. Checks that stopped all stand on one place, and each
 * is a problem of its own.
 */
export function sameProblem({ code, range, message }: Pick<Diagnostic, 'code' | 'range' | 'message'>): string {
  return `${code} ${range.start} ${range.end}${code === checkFailed.code ? ` ${message.what}` : ''}`;
}

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
