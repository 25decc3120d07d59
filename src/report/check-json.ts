import * as z from 'zod';

/**
 * The schema of what `steelyard check --json` prints; the one in schemas/ is emitted from this. Built when it is asked
 * for: an editor never does.
 */
export function checkReport() {
  const place = z.strictObject({
    line: z.int().describe('From 1.'),
    column: z.int().describe('From 1, in UTF-16 units.'),
    endLine: z.int(),
    endColumn: z.int().describe('The column after the last character.'),
  });

  const finding = z.strictObject({
    file: z.string(),
    place,
    code: z.string().describe('Stable; the manual has a section for each.'),
    severity: z.enum(['error', 'warning', 'advice']),
    what: z.string().describe('What is wrong.'),
    why: z.string().describe('Why it matters.'),
    instead: z.string().describe('What to write instead.'),
    fix: z.strictObject({ title: z.string(), place, text: z.string() }).optional(),
  });

  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('check'),
    files: z.array(z.string()).describe('The files that were asked for.'),
    errors: z.int(),
    warnings: z.int(),
    advice: z.int(),
    findings: z.array(finding),
  }).describe('What is wrong in some estimates.');
}

export type CheckReport = z.infer<ReturnType<typeof checkReport>>;
export type CheckFinding = CheckReport['findings'][number];
