import { sentence, type Message, type Problem, type Range, type Severity } from '../language/index.js';
import type { Place } from './service.js';

/** A problem as an editor, a terminal or a build server shows it. Offsets are UTF-16 units of the file. */
export interface Diagnostic {
  readonly uri: string;
  readonly range: Range;
  readonly code: string;
  readonly severity: Severity;
  readonly message: Message;
  /** The three parts as one paragraph. */
  readonly text: string;
  readonly related: { readonly place: Place; readonly says: string } | undefined;
  readonly fix: { readonly title: string; readonly place: Place; readonly text: string } | undefined;
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
    fix: problem.fix === undefined || fixAt === undefined ? undefined : { title: problem.fix.title, place: fixAt, text: problem.fix.text },
  };
}
