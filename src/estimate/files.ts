import { problem, type Problem, type Span, type Tree } from '../language/index.js';
import { is, kinds, readBlock, formatVersion, type Record } from '../vocabulary/index.js';
import * as rules from './file-rules.js';

/** Where the estimate room gets trees from. Paths are resolved by it, never outside the root. */
export interface Sources {
  /** The tree of a file; `missing` where there is none; `unknown` where it has not been read yet. */
  readonly treeOf: (uri: string) => Tree | 'missing' | 'unknown';
  /** Where a path leads from a file, or undefined where that is outside the workspace or not a path. */
  readonly resolvePath: (fromUri: string, path: string) => string | undefined;
}

/** Limits on shared files; each has its message. */
export const fileLimits = { depth: 8, files: 24 } as const;

export interface Gathered {
  /** Records of the file and all it uses, shared files first, each file once. */
  readonly records: readonly Record[];
  readonly problems: readonly Problem[];
  /** Every file that was asked for, those that are missing or not read yet too. */
  readonly uses: readonly string[];
  readonly waitsFor: readonly string[];
}

/** Reads a file and the files it uses. */
export function gather(uri: string, sources: Sources): Gathered {
  const records: Record[] = [];
  const problems: Problem[] = [];
  const done = new Set<string>();
  const waitsFor: string[] = [];
  visit(uri, []);
  done.delete(uri);
  return { records, problems, uses: [...done], waitsFor };

  function visit(file: string, path: readonly string[]): void {
    done.add(file);
    const tree = sources.treeOf(file);
    if (typeof tree === 'string') return;
    const own: Record[] = [];
    for (const block of tree.blocks) {
      const read = readBlock(block);
      for (const one of read.problems) problems.push(one);
      for (const record of read.records) own.push(record);
    }
    if (!checkFormat(tree, own)) return;
    for (const record of own) if (is(record, kinds.use) && record.title !== undefined) follow(record, file, [...path, file]);
    for (const record of own) records.push(record);
  }

  function follow(record: Record, file: string, path: readonly string[]): void {
    const title = record.title as NonNullable<Record['title']>;
    const target = sources.resolvePath(file, title.text);
    const say = (rule: typeof rules.useMissing) => void problems.push(problem(rule, title.at, { path: title.text }));
    if (target === undefined) say(rules.useOutside);
    else if (path.includes(target)) say(rules.useCircular);
    else if (done.has(target)) return; // a shared file that two shared files use is read once
    else if (path.length >= fileLimits.depth || done.size >= fileLimits.files) say(rules.useTooMany);
    else {
      const tree = sources.treeOf(target);
      if (tree === 'missing') say(rules.useMissing);
      if (tree === 'unknown') waitsFor.push(target);
      visit(target, path);
    }
  }

  /** False where the file is of a newer form, and nothing of it may be trusted. */
  function checkFormat(tree: Tree, own: readonly Record[]): boolean {
    const first = own[0];
    const format = own.find((record) => is(record, kinds.format));
    const at: Span = first?.at ?? { block: tree.blocks[0] as NonNullable<Tree['blocks'][0]>, start: 0, end: 0 };
    if (format === undefined) {
      if (tree.text.trim() === '' && tree.uri !== uri) return true;
      const headless = tree.blocks.find((block) => block.statements.length > 0);
      // Where the first line can't be read it has its own message already.
      if (first !== undefined || headless === undefined) problems.push(problem(rules.formatMissing, { ...at, end: at.start + firstWord(at) }, undefined));
      return true;
    }
    if (format !== first) problems.push(problem(rules.formatNotFirst, format.at, undefined));
    const version = is(format, kinds.format) ? format.values.version : undefined;
    if (version !== undefined && version.likely.gt(formatVersion)) {
      problems.push(problem(rules.formatNewer, version.at, { version: version.likely.toFixed() }));
      return false;
    }
    return true;
  }
}

function firstWord(at: Span): number {
  const text = at.block.text.slice(at.start, at.end);
  return /^[^\s]*/.exec(text)?.[0].length ?? 0;
}
