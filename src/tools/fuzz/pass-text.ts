import { parse, print, reparse, statementsOf, type Tree } from '../../language/index.js';
import { applyEdits, formatEdits, formatOnTypeEdits } from '../../service/format/format.js';
import { readBlock, recordJson } from '../../vocabulary/index.js';
import { holds, same } from './claim.js';
import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { uriOf } from './over.js';

/** Text to tree and back, the tree after an edit, and columns: what only needs the text. */
export function passText({ files, name, before }: Input, dice: Dice): void {
  const uri = uriOf(name);
  const text = files.get(name) as string;
  const tree = parse(uri, text);
  same('printing a tree gives the text', print(tree), text);
  partsLieWithin(tree);
  same('parsing again equals parsing anew', shapeOf(reparse(parse(uri, before), text)), shapeOf(tree));
  formatting(tree, dice);
}

function partsLieWithin({ text, blocks, starts }: Tree): void {
  blocks.forEach((block, i) => {
    holds('a block stands where the tree says', text.startsWith(block.text, starts[i]), () => `block ${i}`);
    for (const { at } of block.problems) holds('a problem lies within its block', at.start <= at.end && at.end <= block.text.length, () => `${at.start}–${at.end} of ${block.text.length}`);
  });
}

/** All of a tree but identity. */
function shapeOf(tree: Tree): string {
  const statements = [...statementsOf(tree)].map(({ indent, line, tokens, children }) => [indent, line, children.length, ...tokens.map(({ kind, start, end, text }) => `${kind} ${start} ${end} ${text}`)].join('\t'));
  const blocks = tree.blocks.map(({ lineEnds, comments, problems }) => [lineEnds, ...comments.map(({ start, end, line }) => `# ${start} ${end} ${line}`), ...problems.map(({ code, at, message }) => `${code} ${at.start} ${at.end} ${message.what}`)].join('\t'));
  return [tree.starts.join(' '), ...blocks, ...statements].join('\n');
}

function formatting(tree: Tree, dice: Dice): void {
  const { uri, text } = tree;
  const edits = formatEdits(tree);
  const after = applyEdits(text, edits);
  same('formatting moves nothing but white space', after.replace(/[ \t]/g, ''), text.replace(/[ \t]/g, ''));
  const formatted = after === text ? tree : parse(uri, after);
  if (formatted !== tree) {
    same('formatting loses no comment', commentsOf(formatted), commentsOf(tree));
    same('formatting leaves records as they are', recordsOf(formatted), recordsOf(tree));
    same('formatting twice is as good as once', applyEdits(after, formatEdits(formatted)), after);
  }
  if (!dice.chance(25)) return;
  const start = dice.placeIn(text);
  const part = applyEdits(text, formatEdits(tree, { start, end: Math.min(text.length, start + dice.upTo(300)) }));
  const typed = applyEdits(text, formatOnTypeEdits(tree, dice.placeIn(text)));
  for (const one of [part, typed]) {
    const made = parse(uri, one);
    same('formatting a part loses no comment', commentsOf(made), commentsOf(tree));
    same('formatting a part leaves records as they are', recordsOf(made), recordsOf(tree));
  }
}

function commentsOf({ blocks }: Tree): string {
  return blocks.flatMap((block) => block.comments.map(({ start, end }) => block.text.slice(start, end).trimEnd())).join('\n');
}

/** Records and what is wrong with them; the formatter may change where a line begins, and nothing else. */
function recordsOf({ blocks }: Tree): string {
  return blocks.map((block) => {
    const { records, problems } = readBlock(block);
    return JSON.stringify([records.map(recordJson), problems.map(({ code, at }) => [code, block.text.slice(at.start, at.end).trim()])]);
  }).join('\n');
}
