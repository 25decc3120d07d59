import type { Severity } from '../../language/index.js';
import { artifactList, type SarifFile } from './artifacts.js';
import { FINGERPRINT, fingerprints } from './fingerprint.js';
import { descriptor, levelOf, type SarifRule } from './rules.js';
import type { SarifFix, SarifLocation, SarifLog, SarifRegion, SarifResult } from './types.js';
import { messageText } from './words.js';

/** A range of a file: lines and columns from 1 in UTF-16 units, without a byte order mark. */
export interface SarifPlace {
  readonly file: SarifFile;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A file as a whole, for what stands nowhere in it. */
export interface SarifWhole {
  readonly file: SarifFile;
}

/** Something to tell about a place: a problem, or a change. */
export interface SarifFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly text: string;
  readonly at: SarifPlace | SarifWhole;
  /** What tells it from others by the same rule: the text of the lines that it stands on. */
  readonly words: string;
  readonly related: readonly { readonly at: SarifPlace; readonly says: string }[];
  readonly fix: { readonly title: string; readonly at: SarifPlace; readonly text: string } | undefined;
  /** Plain data for whoever reads on. */
  readonly properties?: Readonly<Record<string, unknown>>;
}

export interface SarifInput {
  readonly version: string;
  /** The files that were asked for. */
  readonly asked: readonly SarifFile[];
  readonly findings: readonly SarifFinding[];
  /** What is known of a rule that something was found by. */
  readonly rule: (id: string) => SarifRule;
  readonly exitCode: number;
  /** False where the tool itself stumbled, so that findings may be missing. */
  readonly successful: boolean;
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** An identifier, not an address that anything is loaded from. */
const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/**
 * One run as a SARIF log. It holds no time, no machine, no command line and no absolute path, so that the same files
 * give the same bytes wherever they stand (Appendix F); of the rules it describes those that something was found by.
 */
export function sarifLog({ version, asked, findings, rule, exitCode, successful, properties }: SarifInput): SarifLog {
  const artifacts = artifactList(asked);
  const rules = [...new Set(findings.map((one) => one.rule))].sort().map(rule);
  const indexOf = new Map(rules.map(({ id }, i) => [id, i]));
  const fingerprint = fingerprints();

  const location = (at: SarifPlace | SarifWhole): SarifLocation['physicalLocation'] => ({ artifactLocation: artifacts.locationOf(at.file), ...('line' in at ? { region: region(at) } : {}) });
  const fixOf = ({ title, at, text }: NonNullable<SarifFinding['fix']>): SarifFix => ({
    description: { text: messageText(title) },
    // What is inserted goes into the file as it is.
    artifactChanges: [{ artifactLocation: artifacts.locationOf(at.file), replacements: [{ deletedRegion: region(at), insertedContent: { text } }] }],
  });
  const resultOf = (one: SarifFinding): SarifResult => ({
    ruleId: one.rule,
    ruleIndex: indexOf.get(one.rule) ?? -1,
    level: levelOf(one.severity),
    message: { text: messageText(one.text) },
    locations: [{ physicalLocation: location(one.at) }],
    ...(one.related.length === 0 ? {} : { relatedLocations: one.related.map(({ at, says }, i) => ({ id: i + 1, physicalLocation: location(at), message: { text: messageText(says) } })) }),
    partialFingerprints: { [FINGERPRINT]: fingerprint(one.at.file.identity, one.rule, one.words) },
    ...(one.fix === undefined ? {} : { fixes: [fixOf(one.fix)] }),
    ...(one.properties === undefined ? {} : { properties: one.properties }),
  });

  const results = findings.map(resultOf);
  return {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'Steelyard', version, rules: rules.map(descriptor) } },
      invocations: [{ executionSuccessful: successful, exitCode }],
      originalUriBaseIds: artifacts.bases,
      columnKind: 'utf16CodeUnits',
      defaultEncoding: 'utf-8',
      defaultSourceLanguage: 'steelyard',
      artifacts: artifacts.all(),
      results,
      ...(properties === undefined ? {} : { properties }),
    }],
  };
}

function region({ line, column, endLine, endColumn }: Omit<SarifPlace, 'file'>): SarifRegion {
  return { startLine: line, startColumn: column, endLine, endColumn };
}
