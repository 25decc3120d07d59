import { plainForm, problem, type Problem, type Span, type Statement, type Tree } from '../language/index.js';
import { is, kinds, formatVersion, valueRules, type Record } from '../vocabulary/index.js';
import * as rules from './file-rules.js';
import type { Lost } from './echoes.js';
import { onlyOnce } from './name-rules.js';
import { headingIn, readFile } from './read-file.js';

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
  /** The first record of the file itself. */
  readonly first: Record | undefined;
  readonly problems: readonly Problem[];
  /** Every file that was asked for, those that are missing or not read yet too. */
  readonly uses: readonly string[];
  readonly waitsFor: readonly string[];
  readonly lost: Lost;
}

/** Reads a file and the files it uses. */
export function gather(uri: string, sources: Sources): Gathered {
  const read: (readonly Record[])[] = [];
  const problems: Problem[] = [];
  const done = new Set<string>();
  const waitsFor: string[] = [];
  const words = new Set<string>();
  let filesLost = false;
  let first: Record | undefined;
  visit(uri, []);
  done.delete(uri);
  return { records: read.length === 1 ? (read[0] as readonly Record[]) : read.flat(), first, problems, uses: [...done], waitsFor, lost: { files: filesLost, words } };

  function visit(file: string, path: readonly string[]): void {
    done.add(file);
    const tree = sources.treeOf(file);
    if (typeof tree === 'string') {
      filesLost = true;
      return;
    }
    const { records: own, telling, unread } = readFile(tree);
    if (unread !== undefined) {
      problems.push(problem(rules.tooManyProblems, { block: unread, start: 0, end: unread.text.search(/\r|\n|$/) }, undefined));
      filesLost = true;
    }
    if (file === uri) [first] = own;
    const heading = headingIn(own);
    if (!checkFormat(tree, own[0], heading)) {
      filesLost = true;
      return;
    }
    for (const block of telling) {
      for (const one of block.problems) problems.push(one);
      for (const statement of block.unread) lose(statement);
      for (const { kind, name, statement } of block.records) if (kind.name !== 'none' && name === undefined) loseToken(statement.tokens[1]);
    }
    for (const record of heading) {
      if (!is(record, kinds.use)) continue;
      if (record.title === undefined) filesLost = true;
      else follow(record, file, [...path, file]);
    }
    read.push(own);
  }

  /** Whatever a line that could not be read may have named. */
  function lose({ tokens, children }: Statement): void {
    tokens.forEach(loseToken);
    children.forEach(lose);
  }

  function loseToken(token: Statement['tokens'][0] | undefined): void {
    if (token !== undefined && token.kind !== 'text') words.add(token.kind === 'strange' ? (plainForm(token.text) ?? token.text) : token.text);
  }

  function follow(record: Record, file: string, path: readonly string[]): void {
    const title = record.title as NonNullable<Record['title']>;
    const target = sources.resolvePath(file, title.text);
    const say = (rule: typeof rules.useMissing) => {
      problems.push(problem(rule, title.at, { path: title.text }));
      if (rule !== rules.useCircular) filesLost = true;
    };
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
  function checkFormat(tree: Tree, first: Record | undefined, heading: readonly Record[]): boolean {
    const [format, ...others] = heading.filter((record) => is(record, kinds.format));
    const [block] = tree.blocks;
    // A tree of only some blocks may have none.
    if (block === undefined) return true;
    const at: Span = first?.at ?? { block, start: 0, end: 0 };
    if (format === undefined) {
      if (tree.text.trim() === '' && tree.uri !== uri) return true;
      // Where the first line can't be read it has its own message already.
      if (nothingBefore(tree, first)) problems.push(problem(rules.formatMissing, { ...at, end: at.start + firstWord(at) }, undefined));
      return true;
    }
    if (format !== first) problems.push(problem(rules.formatNotFirst, format.at, undefined));
    for (const other of others) problems.push(problem(onlyOnce, other.at, { kind: kinds.format.word }, { at: format.at, says: 'The first one' }));
    const { version } = format.values;
    if (version === undefined && !format.broken) problems.push(problem(valueRules.expected, format.at, { wanted: 'the number of the form', example: `${kinds.format.word} ${formatVersion}`, found: undefined }));
    if (version !== undefined && version.likely.gt(formatVersion)) {
      problems.push(problem(rules.formatNewer, version.at, { version: version.likely.toFixed() }));
      return false;
    }
    return true;
  }
}

/** True where nothing but blank lines and comments stands before a record, or in the whole file where there is none. */
function nothingBefore({ text, blocks, starts }: Tree, record: Record | undefined): boolean {
  const end = record === undefined ? text.length : (starts[blocks.indexOf(record.block)] ?? 0) + record.at.start;
  return text.slice(0, end).replace(/^\ufeff/, '').split('\n').every((line) => /^\s*(#|$)/.test(line));
}

function firstWord(at: Span): number {
  const text = at.block.text.slice(at.start, at.end);
  return /^[^\s]*/.exec(text)?.[0].length ?? 0;
}
