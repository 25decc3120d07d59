import { parse, rangeIn, reparse, type Block, type Problem, type Range, type Span, type Tree } from '../language/index.js';
import { resolve, type Resolved } from '../estimate/index.js';
import { weigh, type Comparison } from '../weigh/index.js';
import { toDiagnostic, type Diagnostic } from './diagnostics.js';
import { hoverAt, type Hover } from './hover.js';

/** What the service needs from the world around it. It reads nothing else, and never waits. */
export interface ServiceHost {
  /** The current text of a file: open in an editor, or on disk. `missing` where there is none; `unknown` where it is not read yet. */
  readonly read: (uri: string) => { readonly text: string } | 'missing' | 'unknown';
  /** Where a path in a `use` line leads, or undefined where that is outside the workspace. */
  readonly resolvePath: (fromUri: string, path: string) => string | undefined;
}

/** A place in a file, in UTF-16 offsets. */
export interface Place {
  readonly uri: string;
  readonly range: Range;
}

/** All that is known of one estimate. */
export interface Weighing {
  readonly resolved: Resolved;
  readonly comparison: Comparison;
  /** Every problem, in whichever file it is, the same one once. */
  readonly problems: readonly Problem[];
}

/** The one facade over language, vocabulary, estimate, weigh and report: documents in, plain data out. */
export interface LanguageService {
  /** The estimate of a file, resolved and weighed. Kept until one of its files changes. */
  readonly weighing: (uri: string) => Weighing;
  /** Problems in this file itself. */
  readonly diagnostics: (uri: string) => readonly Diagnostic[];
  /** Problems in this file and in the files it uses, by file. */
  readonly allDiagnostics: (uri: string) => ReadonlyMap<string, readonly Diagnostic[]>;
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

interface Kept {
  readonly trees: ReadonlyMap<string, Tree | undefined>;
  readonly weighing: Weighing;
}

export function createLanguageService(host: ServiceHost): LanguageService {
  const trees = new Map<string, Tree>();
  const kept = new Map<string, Kept>();

  const treeOf = (uri: string): Tree | 'missing' | 'unknown' => {
    const read = host.read(uri);
    if (typeof read === 'string') {
      trees.delete(uri);
      return read;
    }
    const before = trees.get(uri);
    const tree = before === undefined ? parse(uri, read.text) : reparse(before, read.text);
    trees.set(uri, tree);
    return tree;
  };

  const weighing = (uri: string): Weighing => {
    const before = kept.get(uri);
    if (before !== undefined && [...before.trees].every(([file, tree]) => known(treeOf(file)) === tree)) return before.weighing;
    const resolved = resolve(uri, { treeOf, resolvePath: host.resolvePath });
    const flawed = new Set<Block>(resolved.problems.filter((one) => one.severity === 'error').map((one) => one.at.block));
    const comparison = weigh(resolved.estimate, flawed);
    const made: Weighing = { resolved, comparison, problems: onceEach([...resolved.problems, ...comparison.problems]) };
    const files = [uri, ...resolved.uses];
    if (resolved.waitsFor.length === 0) kept.set(uri, { trees: new Map(files.map((file) => [file, trees.get(file)])), weighing: made });
    return made;
  };

  const place = (span: Span): Place | undefined => {
    const tree = trees.get(span.block.uri);
    const range = tree === undefined ? undefined : rangeIn(tree, span);
    return range === undefined ? undefined : { uri: span.block.uri, range };
  };

  const allDiagnostics = (uri: string): ReadonlyMap<string, readonly Diagnostic[]> => {
    const byFile = new Map<string, Diagnostic[]>();
    for (const one of weighing(uri).problems) {
      const diagnostic = toDiagnostic(one, place);
      if (diagnostic === undefined) continue;
      const list = byFile.get(diagnostic.uri) ?? [];
      list.push(diagnostic);
      byFile.set(diagnostic.uri, list);
    }
    for (const list of byFile.values()) list.sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
    return byFile;
  };

  return Object.freeze<LanguageService>({
    weighing,
    place,
    allDiagnostics,
    diagnostics: (uri) => allDiagnostics(uri).get(uri) ?? [],
    hover: (uri, offset) => {
      const tree = known(treeOf(uri));
      return tree === undefined ? undefined : hoverAt(tree, offset, weighing(uri));
    },
    uses: (uri) => weighing(uri).resolved.uses,
    waitsFor: (uri) => weighing(uri).resolved.waitsFor,
    tree: (uri) => known(treeOf(uri)),
    forget: (uri) => {
      trees.delete(uri);
      kept.delete(uri);
    },
  });
}

function known(tree: Tree | 'missing' | 'unknown'): Tree | undefined {
  return typeof tree === 'string' ? undefined : tree;
}

/** Two options that share a line find its problem twice; it is told once. */
function onceEach(problems: readonly Problem[]): Problem[] {
  const seen = new Map<Block, Set<string>>();
  return problems.filter(({ code, at }) => {
    const keys = seen.get(at.block) ?? new Set<string>();
    seen.set(at.block, keys);
    const key = `${code} ${at.start} ${at.end}`;
    if (keys.has(key)) return false;
    keys.add(key);
    return true;
  });
}
