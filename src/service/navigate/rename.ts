import type { Span } from '../../language/index.js';
import { clip, type Record } from '../../vocabulary/index.js';
import type { Mention } from '../at.js';
import type { FeatureContext } from '../context.js';
import type { FileEdits, Renamable, TextEdit } from '../feature-types.js';
import { meantBy, mentionAt, namesIn, usesOf, type Names } from './names.js';
import { estimatesWith, placesOf, targetOf } from './references.js';
import { clashIn, unreadableIn } from './rename-checks.js';

/** Characters in a name. A worksheet line has about 80, and a name is only its handle. */
const LONGEST_NAME = 60;

type Refused = { readonly refused: string };

/** The name under the cursor, or why nothing here can be renamed. */
export function prepareRenameAt(context: FeatureContext, uri: string, offset: number): Renamable | undefined {
  const tree = context.tree(uri);
  if (tree === undefined) return undefined;
  const mention = mentionAt(tree, offset);
  const range = mention === undefined ? undefined : context.place(mention.at)?.range;
  if (mention === undefined || range === undefined) return { refused: 'There is no name here.' };
  if (mention.builtIn) return { refused: `${mention.name} is a fixed word of estimates; no line gives it.` };
  if (meantBy(mention, namesIn(context.weighing(uri)).scope) === undefined) return { refused: noLineGives(mention.name) };
  return { range, name: mention.name };
}

/** The edits of a rename in every file concerned, or why it is refused. Nothing else than this one line's name changes its meaning. */
export function renameAt(context: FeatureContext, uri: string, offset: number, name: string, others: readonly string[]): FileEdits | Refused {
  const prepared = prepareRenameAt(context, uri, offset);
  const tree = context.tree(uri);
  const mention = tree === undefined ? undefined : mentionAt(tree, offset);
  if (prepared === undefined || mention === undefined) return { refused: 'There is no name here.' };
  if ('refused' in prepared && mention.builtIn) return prepared;
  const bad = badName(name);
  if (bad !== undefined) return { refused: bad };
  const uris = [uri, ...others];
  const target = targetOf(context, mention, uris);
  if (target?.name === undefined) return { refused: noLineGives(mention.name) };
  if (target.name.name === name) return new Map();

  const unread = unreadFile(context, uris);
  if (unread !== undefined) return { refused: `${fileName(unread)} is not read yet; it may use the name too.` };
  const estimates = estimatesWith(context, target, uris);
  for (const index of estimates) {
    const refused = clashIn(index, target, name) ?? unreadableIn(index, target.name.name);
    if (refused !== undefined) return { refused };
  }
  const uses = [...new Set(estimates.flatMap((index) => usesOf(index, target)))];
  const everyIndex = uris.map((one) => namesIn(context.weighing(one)));
  const torn = uses.find((use) => meansAnother(use, target, everyIndex));
  if (torn !== undefined) return { refused: `${fileName(torn.at.block.uri)} is shared, and in another estimate its ${clip(torn.name)} means another line.` };
  return editsFor(context, [target.name.at, ...uses.map(({ at }) => at)], name);
}

/** Why a name can't be written, or undefined where it can. */
function badName(name: string): string | undefined {
  if (name === '') return 'A name needs at least one letter.';
  if (name.length > LONGEST_NAME) return `A name has at most ${LONGEST_NAME} characters.`;
  if (!/^[a-z]/i.test(name)) return 'A name starts with a letter.';
  if (!/^[a-z0-9-]+$/i.test(name)) return 'A name has only letters, digits and hyphens.';
  if (name.endsWith('-')) return 'A name does not end with a hyphen.';
  return undefined;
}

function noLineGives(name: string): string {
  return `No line gives the name ${clip(name)}; correct it first.`;
}

/** A line of a shared file that means one line here and another one in a further estimate. */
function meansAnother(use: Mention, target: Record, estimates: readonly Names[]): boolean {
  return estimates.some((index) => index.blocks.has(use.at.block) && (meantBy(use, index.scope) ?? target) !== target);
}

function unreadFile(context: FeatureContext, uris: readonly string[]): string | undefined {
  for (const uri of uris) {
    const [first] = context.weighing(uri).resolved.waitsFor;
    if (first !== undefined) return first;
  }
  return undefined;
}

function editsFor(context: FeatureContext, spans: readonly Span[], name: string): FileEdits {
  const edits = new Map<string, TextEdit[]>();
  for (const { uri, range } of placesOf(context, spans)) {
    const list = edits.get(uri) ?? [];
    list.push({ range, text: name });
    edits.set(uri, list);
  }
  for (const list of edits.values()) list.sort((a, b) => a.range.start - b.range.start);
  return edits;
}

function fileName(uri: string): string {
  return uri.slice(uri.lastIndexOf('/') + 1);
}

