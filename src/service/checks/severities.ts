import type { Problem, Rule, Severity } from '../../language/index.js';

/** What a shop makes of a problem, by its code. */
export type Severities = Readonly<{ [code: string]: Severity | 'off' }>;

/** How much a problem matters here, or undefined where it is switched off. A line that can't be read stays an error. */
export function severityOf({ code, severity }: Problem, severities: Severities, rules: ReadonlyMap<string, Rule<never>>): Severity | undefined {
  const wanted = Object.hasOwn(severities, code) ? severities[code] : undefined;
  if (wanted === undefined || (severity === 'error' && rules.get(code)?.family === 'shape')) return severity;
  return wanted === 'off' ? undefined : wanted;
}
