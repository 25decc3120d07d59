import { parse, print, reparse, statementsOf, type Block, type Tree } from '../../language/index.js';
import { applyEdits, formatEdits, formatOnTypeEdits } from '../../service/format/format.js';
import { readBlock, recordJson } from '../../vocabulary/index.js';
import { holds, same } from './claim.js';
import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { uriOf } from './over.js';

/** Text to tree and back, and the tree after an edit. */
export function passText({ files, name, before }: Input, dice: Dice): Tree {
  const uri = uriOf(name);
  const text = files.get(name) as string;
  const tree = parse(uri, text);
  same('printing a tree gives the text', print(tree), text);
  partsLieWithin(tree);
  parsedAgain(parse(uri, before), tree, dice);
  return tree;
}

function partsLieWithin({ text, blocks, starts }: Tree): void {
  blocks.forEach((block, i) => {
    holds('a block stands where the tree says', text.startsWith(block.text, starts[i]), () => `block ${i}`);
    for (const { at } of block.problems) holds('a problem lies within its block', at.start <= at.end && at.end <= block.text.length, () => `${at.start}–${at.end} of ${block.text.length}`);
  });
}

/** A block that parsing again took over is what it was in the tree before: of most inputs it is only held against its text. */
function parsedAgain(before: Tree, anew: Tree, dice: Dice): void {
  const again = reparse(before, anew.text);
  same('parsing again finds the same blocks', again.starts.join(' '), anew.starts.join(' '));
  const kept = new Set(dice.chance(10) ? [] : before.blocks);
  again.blocks.forEach(({ text }, i) => same('parsing again gives each block its text', text, anew.blocks[i]?.text ?? ''));
  const isNew = again.blocks.map((block) => !kept.has(block));
  const newOf = (tree: Tree): Tree => ({ ...tree, blocks: tree.blocks.filter((_, i) => isNew[i]) });
  same('parsing again equals parsing anew', shapeOf(newOf(again)), shapeOf(newOf(anew)));
}

/** All of a tree's blocks but identity. */
function shapeOf(tree: Tree): string {
  const statements = [...statementsOf(tree)].map(({ indent, line, tokens, children }) => [indent, line, children.length, ...tokens.map(({ kind, start, end, text }) => `${kind} ${start} ${end} ${text}`)].join('\t'));
  const blocks = tree.blocks.map(({ lineEnds, comments, problems }) => [lineEnds, ...comments.map(({ start, end, line }) => `# ${start} ${end} ${line}`), ...problems.map(({ code, at, message }) => `${code} ${at.start} ${at.end} ${message.what}`)].join('\t'));
  return [...blocks, ...statements].join('\n');
}

/** Columns: only white space moves, nothing is lost, and twice is as good as once. */
export function passFormat(tree: Tree, dice: Dice): void {
  const { uri, text } = tree;
  const edits = formatEdits(tree);
  const after = applyEdits(text, edits);
  same('formatting moves nothing but white space', after.replace(/[ \t]/g, ''), text.replace(/[ \t]/g, ''));
  const formatted = after === text ? tree : parse(uri, after);
  if (formatted !== tree) {
    keeps('formatting', formatted, tree);
    same('formatting twice is as good as once', applyEdits(after, formatEdits(formatted)), after);
  }
  if (!dice.chance(20)) return;
  const start = dice.placeIn(text);
  const part = applyEdits(text, formatEdits(tree, { start, end: Math.min(text.length, start + dice.upTo(300)) }));
  const typed = applyEdits(text, formatOnTypeEdits(tree, dice.placeIn(text)));
  for (const one of [part, typed]) {
    if (one !== text) keeps('formatting a part', parse(uri, one), tree);
  }
}

/** Blocks with the same text from the start on, and to the end, say the same. */
function keeps(what: string, made: Tree, tree: Tree): void {
  const [a, b] = [made.blocks, tree.blocks];
  const shorter = Math.min(a.length, b.length);
  let head = 0;
  while (head < shorter && a[head]?.text === b[head]?.text) head++;
  let tail = 0;
  while (tail < shorter - head && a[a.length - 1 - tail]?.text === b[b.length - 1 - tail]?.text) tail++;
  const [mine, theirs] = [a.slice(head, a.length - tail), b.slice(head, b.length - tail)];
  same(`${what} loses no comment`, commentsOf(mine), commentsOf(theirs));
  same(`${what} leaves records as they are`, recordsOf(mine), recordsOf(theirs));
}

function commentsOf(blocks: readonly Block[]): string {
  return blocks.flatMap((block) => block.comments.map(({ start, end }) => block.text.slice(start, end).trimEnd())).join('\n');
}

/** Records and what is wrong with them; the formatter may change where a line begins, and nothing else. */
function recordsOf(blocks: readonly Block[]): string {
  return blocks.map((block) => {
    const { records, problems } = readBlock(block);
    return JSON.stringify([records.map(recordJson), problems.map(({ code, at }) => [code, block.text.slice(at.start, at.end).trim()])]);
  }).join('\n');
}
