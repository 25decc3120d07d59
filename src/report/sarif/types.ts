/**
 * The parts of a SARIF log that the tool writes: Static Analysis Results Interchange Format 2.1.0, OASIS standard, with
 * Errata 01. The numbers are its sections.
 */
export interface SarifLog {
  readonly $schema: string;
  readonly version: '2.1.0';
  readonly runs: readonly [SarifRun];
}

/** 3.14 */
export interface SarifRun {
  readonly tool: { readonly driver: SarifDriver };
  readonly invocations: readonly SarifInvocation[];
  readonly originalUriBaseIds: Readonly<Record<string, { readonly description: SarifText }>>;
  readonly artifacts: readonly SarifArtifact[];
  readonly columnKind: 'utf16CodeUnits';
  readonly defaultEncoding: 'utf-8';
  readonly defaultSourceLanguage: 'steelyard';
  readonly results: readonly SarifResult[];
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** 3.19 */
interface SarifDriver {
  readonly name: string;
  readonly version: string;
  readonly rules: readonly SarifDescriptor[];
}

/** 3.20 */
interface SarifInvocation {
  readonly executionSuccessful: boolean;
  readonly exitCode: number;
}

/** 3.11 and 3.12 */
export interface SarifText {
  readonly text: string;
  readonly markdown?: string;
}

/** 3.24 */
export interface SarifArtifact {
  readonly location: SarifArtifactLocation;
  readonly roles?: readonly string[];
}

/** 3.4 */
export interface SarifArtifactLocation {
  readonly uri: string;
  readonly uriBaseId?: string;
  readonly index: number;
  readonly description?: SarifText;
}

/** 3.49 and 3.50 */
export interface SarifDescriptor {
  readonly id: string;
  readonly shortDescription: SarifText;
  readonly fullDescription: SarifText;
  readonly help: SarifText;
  readonly defaultConfiguration: { readonly level: SarifLevel };
  readonly properties: Readonly<Record<string, unknown>>;
}

export type SarifLevel = 'error' | 'warning' | 'note';

/** 3.27 */
export interface SarifResult {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: SarifLevel;
  readonly message: SarifText;
  readonly locations: readonly SarifLocation[];
  readonly relatedLocations?: readonly SarifLocation[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly SarifFix[];
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** 3.28, with 3.29 in it; without a region it is the whole file. */
export interface SarifLocation {
  readonly id?: number;
  readonly physicalLocation: { readonly artifactLocation: SarifArtifactLocation; readonly region?: SarifRegion };
  readonly message?: SarifText;
}

/** 3.30: lines and columns from 1, the end column behind the last character. */
export interface SarifRegion {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** 3.55, with 3.56 and 3.57 in it */
export interface SarifFix {
  readonly description: SarifText;
  readonly artifactChanges: readonly [{ readonly artifactLocation: SarifArtifactLocation; readonly replacements: readonly [{ readonly deletedRegion: SarifRegion; readonly insertedContent: SarifText }] }];
}
