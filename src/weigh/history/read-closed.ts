import { parseSome, rangeIn, syntaxRules, type Span, type Tree } from '../../language/index.js';
import { resolve, type Sources } from '../../estimate/index.js';
import { is, kinds, readBlock } from '../../vocabulary/index.js';
import { casesOf, type Case } from './case.js';
import { quickCases } from './quick-cases.js';

const { longFile } = syntaxRules;

/** What one file adds to the book. */
export interface ClosedFile {
  readonly cases: readonly (Case & { readonly line: number })[];
  /** Why nothing of it was taken, where something on which its hours rest could not be read; the line counts from 1. */
  readonly wrong: { readonly line: number; readonly why: string } | undefined;
}

/** Whether it is worth reading a text: most files of a shop may still be open. */
export function mayBeClosed(text: string): boolean {
  return /^closed(?![\w-])/m.test(text);
}

/** Lines at the left edge on which no clocked hour rests; they may name options that are left out. */
const BESIDE: ReadonlySet<string> = new Set(['vehicle', 'consider', 'inspect', 'coverage', 'quoted', 'authorised', 'note']);
/** Lines on which clocked hours rest: where one can't be read, what the closing says of the others may be wrong too. */
const NEEDED: ReadonlySet<string> = new Set(['steelyard', 'use', 'closed', 'option', 'labour', 'access']);

/**
 * Reads what a closed file adds to the book. Most files are read by what is clocked alone; where that doesn't settle
 * with which ways in the work was done, or which line is meant, all that the option rests on is resolved. The other
 * options are never weighed. A faulty line that nobody clocked stops only that second reading, which may rest on it.
 */
export function readClosed(uri: string, text: string, sources: Sources): ClosedFile {
  const quick = quickCases(uri, text, sources);
  if (quick !== undefined) return { cases: quick.cases.map(({ at, ...rest }) => ({ ...rest, line: lineOf(quick.tree, at) })), wrong: undefined };
  return resolvedCases(uri, text, sources);
}

/** The same by resolving the estimate. */
export function resolvedCases(uri: string, text: string, sources: Sources): ClosedFile {
  const done = optionDone(parseSome(uri, text, (first) => first === kinds.closed.word));
  const tree = parseSome(uri, text, (first, second) => (first === kinds.option.word && done !== undefined ? second === done : !BESIDE.has(first)));
  const { estimate, problems } = resolve(uri, { ...sources, treeOf: (file) => (file === uri ? tree : sources.treeOf(file)) });
  const wrong = problems.find(({ code, severity, at: { block } }) => severity === 'error' && block.uri === uri && (code === longFile.code || NEEDED.has(block.statements[0]?.tokens[0]?.text ?? '')));
  if (wrong !== undefined) return { cases: [], wrong: { line: lineOf(tree, wrong.at), why: wrong.message.what } };
  return { cases: casesOf(estimate).map(({ at, ...rest }) => ({ ...rest, line: lineOf(tree, at) })), wrong: undefined };
}

function optionDone({ blocks }: Tree): string | undefined {
  return blocks.flatMap((block) => readBlock(block).records).find((one) => is(one, kinds.closed))?.values.for?.name;
}

/** Counted from 1. */
function lineOf(tree: Tree, at: Span): number {
  const end = rangeIn(tree, at)?.start ?? 0;
  let line = 1;
  for (let next = tree.text.indexOf('\n'); next >= 0 && next < end; next = tree.text.indexOf('\n', next + 1)) line++;
  return line;
}
