import type { Range } from '../language/index.js';
import type { Place } from './place.js';

/** One change of text: what stands at the range is replaced. */
export interface TextEdit {
  readonly range: Range;
  readonly text: string;
}

/** Changes to several files. Ranges of one file do not overlap. */
export type FileEdits = ReadonlyMap<string, readonly TextEdit[]>;

/** What a completion offers. `snippet` text holds tab stops as ${1:text}; everything else in it is escaped for that. */
export interface Completion {
  readonly label: string;
  readonly kind: 'kind' | 'fact' | 'choice' | 'unit' | 'name' | 'snippet' | 'file' | 'figure' | 'day';
  /** Behind the label: the figure it would bring, or the title of what it names. */
  readonly detail: string | undefined;
  /** One or two sentences, plain text. */
  readonly says: string | undefined;
  readonly edit: TextEdit;
  readonly snippet: boolean;
  /** Offered in this order. */
  readonly order: number;
}

/** A name that can be changed: where it stands under the cursor, or why it can't be. */
export type Renamable = { readonly range: Range; readonly name: string } | { readonly refused: string };

/** A line in the outline, with the lines below it. */
export interface Symbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'file' | 'shop' | 'vehicle' | 'finding' | 'access' | 'labour' | 'part' | 'sublet' | 'fee' | 'tool' | 'option' | 'other';
  readonly range: Range;
  readonly nameRange: Range;
  readonly children: readonly Symbol[];
}

export interface WorkspaceSymbol {
  readonly name: string;
  readonly kind: Symbol['kind'];
  readonly place: Place;
}

export interface FoldingRange {
  /** Lines from 0, both folded over to the end of the last. */
  readonly startLine: number;
  readonly endLine: number;
  readonly kind: 'lines' | 'comment';
}

export interface Link {
  readonly range: Range;
  readonly uri: string;
}

export interface Highlight {
  readonly range: Range;
  readonly gives: boolean;
}

/** A figure that a line brings into a total. */
export interface TotalUsing {
  readonly option: string;
  readonly title: string;
  /** The figure's name, as for --explain. */
  readonly figure: string;
  readonly amount: string;
}

/** A quiet figure behind a line. */
export interface InlayHint {
  readonly offset: number;
  readonly label: string;
  readonly says: string;
}

/** A quiet line above a line; clicking it shows the comparison, at the figure where one is named. */
export interface Lens {
  readonly range: Range;
  readonly label: string;
  readonly figure: string | undefined;
}

/** What a word is, for colouring beyond the grammar. */
export interface SemanticToken {
  readonly range: Range;
  readonly type: 'access' | 'labour' | 'part' | 'sublet' | 'fee' | 'tool' | 'finding' | 'option' | 'rate' | 'unknown';
  readonly gives: boolean;
  /** True where nothing uses the name. */
  readonly unused: boolean;
}

/** An edit that mends something or carries a line further. */
export interface Action {
  readonly title: string;
  readonly kind: 'fix' | 'refactor';
  /** The problem it mends. */
  readonly code: string | undefined;
  readonly edits: FileEdits;
  /** A file that must be made first, with its text. */
  readonly creates: { readonly uri: string; readonly text: string } | undefined;
}

export interface Completing {
  /** What could stand at the cursor. Asserted by the text after the edit. `today` (YYYY-MM-DD) is offered where a day of the job is said. */
  readonly completions: (uri: string, offset: number, today?: string) => readonly Completion[];
  /** A whole new estimate with tab stops, for an empty file at this address; written on this day (YYYY-MM-DD). */
  readonly starter: (uri: string, today: string) => string;
  /** Rows copied from a spreadsheet or a supplier's list as part lines, or undefined where they are no such rows. */
  readonly pastedRows: (uri: string, offset: number, pasted: string) => { readonly text: string; readonly count: number } | undefined;
}

export interface Navigating {
  readonly definition: (uri: string, offset: number) => readonly Place[];
  /** The line that gives a name, then those that use it: in this file, the files it uses, and `others` that use the file that gives the name. */
  readonly references: (uri: string, offset: number, others: readonly string[]) => readonly Place[];
  readonly prepareRename: (uri: string, offset: number) => Renamable | undefined;
  /** The edits of a rename in all files concerned, or why it is refused. */
  readonly rename: (uri: string, offset: number, name: string, others: readonly string[]) => FileEdits | { readonly refused: string };
  readonly symbols: (uri: string) => readonly Symbol[];
  readonly workspaceSymbols: (query: string, uris: readonly string[]) => readonly WorkspaceSymbol[];
  readonly folding: (uri: string) => readonly FoldingRange[];
  /** From the smallest range around the offset to the whole file. */
  readonly selectionRanges: (uri: string, offset: number) => readonly Range[];
  readonly highlights: (uri: string, offset: number) => readonly Highlight[];
  readonly links: (uri: string) => readonly Link[];
  readonly totalsUsing: (uri: string, offset: number) => readonly TotalUsing[];
}

export interface Showing {
  readonly inlayHints: (uri: string, range: Range) => readonly InlayHint[];
  readonly lenses: (uri: string) => readonly Lens[];
  readonly semanticTokens: (uri: string) => readonly SemanticToken[];
  /** The cheapest option and its margin, in a few words; undefined where the file has no options. */
  readonly status: (uri: string) => { readonly short: string; readonly full: string } | undefined;
}

export interface Formatting {
  /** The file, or the lines of it that touch a range, put into columns. */
  readonly format: (uri: string, range?: Range) => readonly TextEdit[];
  /** What a line end typed just before the offset calls for: the line above and its neighbours put into columns. */
  readonly formatOnType: (uri: string, offset: number) => readonly TextEdit[];
}

export interface Writing extends Formatting {
  readonly actions: (uri: string, range: Range) => readonly Action[];
}
