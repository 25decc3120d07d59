import type { Message, Problem, Range, Severity, Span, Tree } from '../language/index.js';
import type { Resolved } from '../estimate/index.js';
import type { Book, Comparison, Decision } from '../weigh/index.js';
import type { Completing, Navigating, Showing, TextEdit, Writing } from './feature-types.js';
import type { Severities } from './checks/severities.js';
import type { Place } from './place.js';
import type { Trial } from './what-if.js';

/** What the service needs from the world around it. It reads nothing else, and never waits. */
export interface ServiceHost {
  /** The current text of a file: open in an editor, or on disk. `missing` where there is none; `unknown` where it is not read yet. */
  readonly read: (uri: string) => { readonly text: string } | 'missing' | 'unknown';
  /** Why a file that is there is read as `missing`, as the end of a sentence that starts with its name: “is larger than an estimate can be.” */
  readonly whyMissing?: (uri: string) => string | undefined;
  /** Where a path in a `use` line leads, or undefined where that is outside the workspace. */
  readonly resolvePath: (fromUri: string, path: string) => string | undefined;
  /** Whether a file is there that is not read, such as a picture. One that must ask first says that it is, and has the estimate looked at again (`forget`) where it is not. Left out by a host that can’t tell: then nobody asks. */
  readonly exists?: (uri: string) => boolean;
  /** Addresses of the estimate files in the workspace, as far as they are known; offered behind `use`. */
  readonly files?: () => readonly string[];
  /** The shop's own book of times, as far as it is read; a new object where it has changed, and the same one where it has not. */
  readonly book?: () => Book;
}

export type { Place } from './place.js';

/** All that is known of one estimate. */
export interface Weighing {
  readonly resolved: Resolved;
  readonly comparison: Comparison;
  /** Every problem, in whichever file it is, the same one once. */
  readonly problems: readonly Problem[];
  /** What the shop knows of how long its work takes; empty where no host gives any. */
  readonly book: Book;
}

/** The one facade over language, vocabulary, estimate, weigh and report: documents in, plain data out. */
export interface LanguageService extends Completing, Navigating, Showing, Writing {
  /** The estimate of a file, resolved and weighed. Kept until one of its files changes. Throws where weighing throws, which `diagnostics` tell. */
  readonly weighing: (uri: string) => Weighing;
  /** The comparison as if some written figures had other values. Touches no file and keeps nothing. */
  readonly trying: (uri: string, trials: readonly Trial[]) => Comparison;
  /** An estimate as if some of its files had other texts. Touches no file and keeps nothing; checks of the trade are left out. */
  readonly weighingTexts: (uri: string, texts: ReadonlyMap<string, string>) => Pick<Weighing, 'resolved' | 'comparison'>;
  /** The one edit that writes a trial into its file; undefined where the text has moved on. */
  readonly trialEdit: (trial: Trial) => { readonly uri: string; readonly edit: TextEdit } | undefined;
  /** What helps to decide beyond the comparison: calendar, risk, flip points and the like. Dearer than weighing; kept with it. */
  readonly decision: (uri: string) => Decision;
  /** Problems in this file itself. */
  readonly diagnostics: (uri: string) => readonly Diagnostic[];
  /** Problems in this file and in the files it uses, by file. */
  readonly allDiagnostics: (uri: string) => ReadonlyMap<string, readonly Diagnostic[]>;
  /** What the shop makes of problems, by code. Totals don't depend on it. */
  readonly configure: (settings: { readonly severities: Severities }) => void;
  /** What there is to say about the place under the pointer. */
  readonly hover: (uri: string, offset: number) => Hover | undefined;
  /** The files this one was made from, missing ones too. */
  readonly uses: (uri: string) => readonly string[];
  /** Files that the host must read before the estimate is whole. */
  readonly waitsFor: (uri: string) => readonly string[];
  /** File offsets of a span, or undefined where the text has moved on. */
  readonly place: (span: Span) => Place | undefined;
  /** The parsed file, or undefined where there is none. */
  readonly tree: (uri: string) => Tree | undefined;
  /** Forgets a file that was closed or deleted. */
  readonly forget: (uri: string) => void;
}

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
  /** The section of the manual about this code. */
  readonly href: string;
  /** The facts that the problem was found from, for fixes of several steps; plain data. */
  readonly data: unknown;
}

/** What a hover says: paragraphs of plain text, to be shown as text and never as markup. */
export interface Hover {
  readonly range: Range;
  readonly paragraphs: readonly string[];
}
