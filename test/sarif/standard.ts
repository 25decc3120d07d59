import * as z from 'zod';

/**
 * The parts of a SARIF log that the tool writes, checked as the standard has them: Static Analysis Results Interchange
 * Format 2.1.0, OASIS standard with Errata 01. Written from its JSON schema (sarif-schema-2.1.0.json, read on the day this
 * was written) and its text; the number behind each is the section. Strict: what is not here the tool does not write.
 * What JSON Schema cannot say is checked by `wrongIn` below.
 */
const text = z.string();
const unique = <T extends z.ZodType>(item: T) => z.array(item).refine((items) => new Set(items.map((one) => JSON.stringify(one))).size === items.length, 'items are unique (3.7.3)');

/** A relative or absolute URI reference, RFC 3986 appendix A: its letters, and `%` only before two hexadecimal digits. */
const uriReference = z.string().regex(/^(?:[A-Za-z0-9\-._~:/?#[\]@!$&'()*+,;=]|%[0-9A-F]{2})+$/);
const absoluteUri = uriReference.regex(/^[A-Za-z][A-Za-z0-9+.-]*:/);

const message = z.strictObject({ text, markdown: text.optional() }); // 3.11; 3.12 has the same two
const propertyBag = z.looseObject({ tags: unique(text).optional() }); // 3.8
const artifactLocation = z.strictObject({ uri: uriReference, uriBaseId: text.optional(), index: z.int().min(0).optional(), description: message.optional() }); // 3.4
const baseLocation = z.strictObject({ uri: uriReference.optional(), uriBaseId: text.optional(), description: message.optional() }); // 3.14.14: a base may be without its address
const region = z.strictObject({ startLine: z.int().min(1), startColumn: z.int().min(1), endLine: z.int().min(1), endColumn: z.int().min(1) }); // 3.30
const physicalLocation = z.strictObject({ artifactLocation, region: region.optional() }); // 3.29: without a region it is the whole file
const location = z.strictObject({ id: z.int().min(0).optional(), physicalLocation, message: message.optional() }); // 3.28
const level = z.enum(['none', 'note', 'warning', 'error']); // 3.27.10, 3.50.3
const roles = z.enum(['analysisTarget', 'standardStream', 'modified', 'added', 'deleted', 'renamed']); // 3.24.6, those that are written

const descriptor = z.strictObject({ // 3.49
  id: text,
  shortDescription: message.optional(),
  fullDescription: message.optional(),
  help: message.optional(),
  helpUri: absoluteUri.optional(),
  defaultConfiguration: z.strictObject({ level }).optional(),
  properties: propertyBag.optional(),
});

const replacement = z.strictObject({ deletedRegion: region, insertedContent: z.strictObject({ text }).optional() }); // 3.57
const fix = z.strictObject({ description: message.optional(), artifactChanges: unique(z.strictObject({ artifactLocation, replacements: z.array(replacement).min(1) })).min(1) }); // 3.55, 3.56

const result = z.strictObject({ // 3.27
  ruleId: text,
  ruleIndex: z.int().min(0),
  level,
  message,
  locations: z.array(location),
  relatedLocations: unique(location).optional(),
  partialFingerprints: z.record(text, text).optional(),
  fixes: unique(fix).optional(),
  properties: propertyBag.optional(),
});

const run = z.strictObject({ // 3.14
  tool: z.strictObject({ driver: z.strictObject({ name: text, version: text, rules: unique(descriptor) }) }), // 3.18, 3.19
  invocations: z.array(z.strictObject({ executionSuccessful: z.boolean(), exitCode: z.int() })), // 3.20
  originalUriBaseIds: z.record(text, baseLocation),
  artifacts: unique(z.strictObject({ location: artifactLocation, roles: unique(roles).optional() })), // 3.24
  columnKind: z.literal('utf16CodeUnits'), // 3.14.17
  defaultEncoding: z.literal('utf-8'),
  defaultSourceLanguage: text,
  results: z.array(result),
  properties: propertyBag.optional(),
});

export const sarifStandard = z.strictObject({ $schema: absoluteUri, version: z.literal('2.1.0'), runs: z.array(run).length(1) }); // 3.13

export type Log = z.infer<typeof sarifStandard>;
export type Region = z.infer<typeof region>;

/** What the text of the standard asks for and a schema can't say. */
export function wrongIn(log: Log): string[] {
  const wrong: string[] = [];
  const [{ tool, results, artifacts, originalUriBaseIds }] = log.runs as [Log['runs'][number]];
  const { rules } = tool.driver;
  const saysOf = (one: z.infer<typeof message> | undefined) => [one?.text ?? '', one?.markdown ?? ''];
  artifacts.forEach(({ location: { uri, uriBaseId, index } }, i) => {
    if (index !== i) wrong.push(`artifact ${i} says it is ${index}`); // 3.4.5
    if (/^[a-z][a-z0-9+.-]*:/i.test(uri)) wrong.push(`${uri} is an address`); // 3.4.4: with a base it is relative
    if (uri.split('/').some((step) => step === '..' || step === '.' || step === '')) wrong.push(`${uri} is not plain`); // 3.10.2
    if (uriBaseId !== undefined && originalUriBaseIds[uriBaseId] === undefined) wrong.push(`${uriBaseId} is not told of`);
  });
  for (const { id, shortDescription, fullDescription, help } of rules) {
    for (const says of [shortDescription, fullDescription, help].flatMap(saysOf)) wrong.push(...wrongMessage(says).map((one) => `${id}: ${one}`));
    if (saysOf(help).some((says) => /<[a-z/!]/i.test(says.replace(/\\</g, '').replace(/```[^]*?```/g, '')))) wrong.push(`${id}: HTML in a message`); // 3.11.4.2
  }
  for (const { ruleId, ruleIndex, message: says, locations, relatedLocations = [], fixes = [] } of results) {
    if (rules[ruleIndex]?.id !== ruleId) wrong.push(`${ruleId} is not rule ${ruleIndex}`); // 3.27.7
    wrong.push(...wrongMessage(says.text).map((one) => `${ruleId}: ${one}`));
    const ids = relatedLocations.map(({ id }) => id);
    if (new Set(ids).size !== ids.length) wrong.push(`${ruleId}: two locations with one id`); // 3.28.2
    for (const { physicalLocation: { artifactLocation: at, region: where } } of [...locations, ...relatedLocations]) {
      const meant = artifacts[at.index ?? -1]?.location;
      if (meant?.uri !== at.uri || meant.uriBaseId !== at.uriBaseId) wrong.push(`${ruleId}: ${at.uri} is not artifact ${at.index}`); // 3.4.2
      if (where === undefined) continue;
      if (where.endLine < where.startLine || (where.endLine === where.startLine && where.endColumn < where.startColumn)) wrong.push(`${ruleId}: a region that ends before it starts`);
    }
    for (const { artifactChanges } of fixes) {
      for (const { deletedRegion: d, insertedContent } of artifactChanges.flatMap(({ replacements }) => replacements)) {
        if (d.startLine === d.endLine && d.startColumn === d.endColumn && (insertedContent?.text ?? '') === '') wrong.push(`${ruleId}: a fix that changes nothing`); // 3.57.2
      }
    }
  }
  return wrong;
}

function wrongMessage(says: string): string[] {
  return [
    ...(/(?<!\{)\{(?:\{\{)*(?!\{)|(?<!\})\}(?:\}\})*(?!\})/.test(says) ? [`a single brace: ${says}`] : []), // 3.11.5
    ...(/(?<!\\)\]\(/.test(says) ? [`a link: ${says}`] : []), // 3.11.6
  ];
}

/** The text of a region, as 3.30 has it: lines end with CR LF or LF, and a byte order mark is no character of the text. */
export function textIn(file: string, { startLine, startColumn, endLine, endColumn }: Region): { readonly start: number; readonly end: number } {
  const mark = file.startsWith('\ufeff') ? 1 : 0;
  const starts = [mark, ...[...file.matchAll(/\r\n|\n/g)].map((found) => found.index + found[0].length)];
  const offset = (line: number, column: number) => (starts[line - 1] ?? NaN) + column - 1;
  return { start: offset(startLine, startColumn), end: offset(endLine, endColumn) };
}
