import { heldByBlocks, Places, Slot, type Block, type Comment, type Problem, type Rule, type Span, type Tree } from '../../language/index.js';
import { closest } from '../../vocabulary/index.js';
import * as rules from './allow-rules.js';
import { found } from './check.js';
import { lineAround } from './lines.js';

/** `# allow CODE: reason`, behind a line or on the line above it. */
interface Allow {
  readonly code: string;
  readonly reason: string;
  readonly at: Span;
  /** True on a line of its own: it is about the next line. */
  readonly alone: boolean;
}

const FORM = /^#\s*allow\s+([A-Za-z][A-Za-z0-9-]*)(?:\s*(:)\s*(.*))?\s*$/;
const kept = new Slot<readonly Allow[]>(heldByBlocks);
const none: readonly Allow[] = [];

/** Every comment of a block that has the form. Whether it means one depends on its code: see `isMeant`. */
function allowsIn(block: Block): readonly Allow[] {
  if (block.comments.length === 0) return none;
  let allows = kept.get(block);
  if (allows === undefined) kept.set(block, (allows = block.comments.flatMap((comment) => readAllow(block, comment))));
  return allows;
}

const allowing = new Places<Block>((block) => allowsIn(block).length > 0);

function readAllow(block: Block, { start, end }: Comment): Allow[] {
  const [, code, colon, reason = ''] = FORM.exec(block.text.slice(start, end)) ?? [];
  // “# allow time for curing” is a remark like any other.
  if (code === undefined || (colon === undefined && !code.includes('-'))) return [];
  return [{ code, reason: reason.trim(), at: { block, start, end }, alone: block.text.slice(lineAround(block.text, start).start, start).trim() === '' }];
}

interface Asked {
  readonly trees: readonly Tree[];
  readonly rules: ReadonlyMap<string, Rule<never>>;
  /** The file in which a comment that allows nothing is told of; a shared file may need it for another estimate. */
  readonly own: string;
  /** False where checks could not be made, so that nobody knows what there is to allow. */
  readonly whole: boolean;
}

/** Takes out what is allowed where it stands, and tells of comments that allow nothing, or don't say why. */
export function withAllowed(problems: readonly Problem[], { trees, rules: known, own, whole }: Asked): readonly Problem[] {
  const allowed = new Set<Problem>();
  const told: Problem[] = [];
  for (const tree of trees) {
    for (const i of allowing.in(tree.blocks, tree.blocks[0])) {
      for (const allow of allowsIn(tree.blocks[i] as Block)) {
        const rule = known.get(allow.code);
        if (rule === undefined) {
          told.push(found(rules.allowUnknown, allow.at, { code: allow.code, meant: closest(allow.code, known.keys()) }));
          continue;
        }
        const here = problems.filter(({ code, at }) => code === allow.code && covers(allow, at, tree.blocks[i + 1]));
        const shape = here.some(({ severity }) => rule.family === 'shape' && severity === 'error');
        if (shape) told.push(found(rules.allowShape, allow.at, { code: allow.code }));
        else if (here.length === 0 && whole && tree.uri === own) told.push(found(rules.allowUnused, allow.at, { code: allow.code }));
        else if (allow.reason === '') told.push(found(rules.allowWithoutReason, allow.at, { code: allow.code }));
        if (!shape) for (const one of here) allowed.add(one);
      }
    }
  }
  if (allowed.size === 0 && told.length === 0) return problems;
  return [...problems.filter((one) => !allowed.has(one)), ...told];
}

/** A comment at the end of a block may be about the first line of the next one. */
function covers({ at: { block, start }, alone }: Allow, at: Span, next: Block | undefined): boolean {
  const { text } = block;
  if (!alone) return at.block === block && sameLine(text, start, at.start);
  const below = firstLine(text, lineAround(text, start).next);
  if (below !== undefined) return at.block === block && sameLine(text, below, at.start);
  return next !== undefined && at.block === next && sameLine(next.text, firstLine(next.text, 0) ?? 0, at.start);
}

function sameLine(text: string, a: number, b: number): boolean {
  return lineAround(text, a).start === lineAround(text, b).start;
}

/** The next line that is neither blank nor a comment. */
function firstLine(text: string, from: number): number | undefined {
  for (let at = from; at < text.length;) {
    const line = lineAround(text, at);
    if (!/^\s*(#|$)/.test(text.slice(line.start, line.end))) return line.start;
    at = line.next;
  }
  return undefined;
}
