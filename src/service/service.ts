import { parse, rangeIn, reparse, type Block, type Problem, type Span, type Tree } from '../language/index.js';
import { resolve, type Resolved } from '../estimate/index.js';
import { decide, weigh, type Book, type Comparison } from '../weigh/index.js';
import { actionsAt } from './actions/actions.js';
import { EMPTY } from './book/entries.js';
import { withAllowed } from './checks/allow.js';
import { checkTrade, isWhole } from './checks/run.js';
import { severityOf, type Severities } from './checks/severities.js';
import { completing } from './complete/index.js';
import { sameProblem, toDiagnostic } from './diagnostics.js';
import type { FeatureContext } from './context.js';
import { formatEdits, formatOnTypeEdits } from './format/format.js';
import { hoverAt } from './hover.js';
import { navigating } from './navigate/index.js';
import { showing } from './show/index.js';
import { withReason } from './missing-file.js';
import { ruleByCode } from './registry.js';
import { shownPlainly } from './shown.js';
import { problemsWithout, WeighingStopped } from './stopped.js';
import { textsWith, trialEdit, type Trial } from './what-if.js';
import type { Diagnostic, LanguageService, Place, ServiceHost, Weighing } from './types.js';

interface Kept {
  /** A file that is missing differs from one that is to be read again. */
  readonly trees: ReadonlyMap<string, Tree | 'missing' | 'unknown'>;
  readonly looked: Looked;
}

/** What came of looking at a file: all that is known of it, or what was read of it where weighing threw. */
type Looked = Weighing | (Omit<Weighing, 'comparison'> & { readonly stopped: WeighingStopped });

export function createLanguageService(host: ServiceHost): LanguageService {
  const trees = new Map<string, Tree>();
  const kept = new Map<string, Kept>();
  let severities: Severities = {};

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

  const weighed = (resolved: Resolved): Comparison => {
    const flawed = new Set<Block>([...resolved.spoiled, ...resolved.problems.filter((one) => one.severity === 'error').map((one) => one.at.block)]);
    try {
      return weigh(resolved.estimate, flawed);
    } catch (error) {
      throw new WeighingStopped(error);
    }
  };

  /** As if the trials stood in the files; nothing of it is kept, and no file is touched. */
  const trying = (uri: string, trials: readonly Trial[]): Comparison => {
    const texts = textsWith(trials, tree, place);
    return texts.size === 0 ? weighing(uri).comparison : weighingTexts(uri, texts).comparison;
  };

  const weighingTexts = (uri: string, texts: ReadonlyMap<string, string>): Pick<Weighing, 'resolved' | 'comparison'> => {
    const tried = new Map([...texts].map(([file, text]) => [file, reparse(tree(file) as Tree, text)]));
    const resolved = resolve(uri, { treeOf: (file) => tried.get(file) ?? treeOf(file), resolvePath: host.resolvePath });
    return { resolved, comparison: weighed(resolved) };
  };

  const lookAt = (uri: string): Looked => {
    const before = kept.get(uri);
    const book = host.book?.() ?? EMPTY;
    if (before !== undefined && before.looked.book === book && [...before.trees].every(([file, tree]) => treeOf(file) === tree)) return before.looked;
    // A text may change while it is worked on: each is read once, and what is kept is kept for what was read.
    const once = new Map<string, ReturnType<typeof treeOf>>();
    const readOnce = (file: string): ReturnType<typeof treeOf> => {
      const tree = once.get(file) ?? treeOf(file);
      once.set(file, tree);
      return tree;
    };
    const resolved = resolve(uri, { treeOf: readOnce, resolvePath: host.resolvePath });
    const files = [uri, ...resolved.uses];
    const looked = lookedAt(resolved, { uri, book, trees: files.flatMap((file) => known(readOnce(file)) ?? []) });
    if (resolved.waitsFor.length === 0) kept.set(uri, { trees: new Map(files.map((file) => [file, readOnce(file)])), looked });
    return looked;
  };

  const lookedAt = (resolved: Resolved, { uri, book, trees }: { readonly uri: string; readonly book: Book; readonly trees: readonly Tree[] }): Looked => {
    try {
      const comparison = weighed(resolved);
      const read = [...resolved.problems, ...comparison.problems];
      const whole = isWhole(resolved, read);
      const all = onceEach([...read, ...checkTrade(resolved, comparison, whole, book, host.exists)]);
      return { resolved, comparison, book, problems: withAllowed(all, { trees, rules: ruleByCode, own: uri, whole }) };
    } catch (error) {
      if (!(error instanceof WeighingStopped)) throw error;
      return { resolved, stopped: error, book, problems: problemsWithout({ resolved, why: error.message, uri }) };
    }
  };

  const weighing = (uri: string): Weighing => {
    const looked = lookAt(uri);
    if ('stopped' in looked) throw looked.stopped;
    return looked;
  };

  const place = (span: Span): Place | undefined => {
    const tree = trees.get(span.block.uri);
    const range = tree === undefined ? undefined : rangeIn(tree, span);
    return range === undefined ? undefined : { uri: span.block.uri, range };
  };

  const allDiagnostics = (uri: string): ReadonlyMap<string, readonly Diagnostic[]> => {
    const byFile = new Map<string, Diagnostic[]>();
    for (const one of lookAt(uri).problems) {
      const severity = severityOf(one, severities, ruleByCode);
      const diagnostic = severity === undefined ? undefined : toDiagnostic({ ...one, severity }, place);
      if (diagnostic === undefined) continue;
      const list = byFile.get(diagnostic.uri) ?? [];
      list.push(withReason(diagnostic, { tree, host }));
      byFile.set(diagnostic.uri, list);
    }
    for (const list of byFile.values()) list.sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
    return byFile;
  };

  const tree = (uri: string): Tree | undefined => known(treeOf(uri));
  const context: FeatureContext = { host, tree, weighing, place };

  return Object.freeze(shownPlainly({
    ...completing(context),
    ...navigating(context),
    ...showing(context),
    format: (uri, range) => {
      const found = tree(uri);
      return found === undefined ? [] : formatEdits(found, range);
    },
    formatOnType: (uri, offset) => {
      const found = tree(uri);
      return found === undefined ? [] : formatOnTypeEdits(found, offset);
    },
    actions: (uri, range) => actionsAt(uri, range, context, allDiagnostics(uri).get(uri) ?? []),
    configure: (settings) => void (severities = settings.severities),
    weighing,
    trying,
    weighingTexts,
    trialEdit: (trial) => trialEdit(trial, place),
    decision: (uri) => decide(weighing(uri).comparison),
    place,
    allDiagnostics,
    diagnostics: (uri) => allDiagnostics(uri).get(uri) ?? [],
    hover: (uri, offset) => {
      const tree = known(treeOf(uri));
      return tree === undefined ? undefined : hoverAt(tree, offset, weighing(uri));
    },
    uses: (uri) => lookAt(uri).resolved.uses,
    waitsFor: (uri) => lookAt(uri).resolved.waitsFor,
    tree,
    forget: (uri) => {
      trees.delete(uri);
      kept.delete(uri);
    },
  }));
}

function known(tree: Tree | 'missing' | 'unknown'): Tree | undefined {
  return typeof tree === 'string' ? undefined : tree;
}

/** Two options that share a line find its problem twice; it is told once. */
function onceEach(problems: readonly Problem[]): Problem[] {
  const seen = new Map<Block, Set<string>>();
  return problems.filter(({ code, at, message }) => {
    const keys = seen.get(at.block) ?? new Set<string>();
    seen.set(at.block, keys);
    const key = sameProblem({ code, range: at, message });
    if (keys.has(key)) return false;
    keys.add(key);
    return true;
  });
}
