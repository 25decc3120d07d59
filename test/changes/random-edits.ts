import type { Draw } from '../support/random-draw.js';

/** A line at the left edge with all that is indented below it. */
export type BlockOfLines = readonly string[];

export function blocksOf(text: string): string[][] {
  const found: string[][] = [];
  for (const line of text.replace(/\n$/, '').split('\n')) {
    if (/^[a-z]/.test(line)) found.push([line]);
    else if (found.length > 0 && /\S/.test(line) && !line.startsWith('#')) found[found.length - 1]?.push(line);
  }
  return found;
}

export function textOf(blocks: readonly BlockOfLines[]): string {
  return `${blocks.flat().join('\n')}\n`;
}

/** The same estimate with its lines at the left edge, and the facts and lines below them, in another order. */
export function shuffled(text: string, draw: Draw): string {
  const [first, ...rest] = blocksOf(text);
  return textOf([first ?? [], ...draw.shuffled(rest).map((block) => [block[0] as string, ...draw.shuffled(groupsBelow(block)).flat()])]);
}

/** The lines right below a head, each with what is below it. */
function groupsBelow([, ...below]: BlockOfLines): string[][] {
  const groups: string[][] = [];
  for (const line of below) {
    if (/^ {2}\S/.test(line)) groups.push([line]);
    else groups[groups.length - 1]?.push(line);
  }
  return groups;
}

/** An estimate as somebody might have written it next: some of its lines say something else. Not every one is whole. */
export function edited(text: string, draw: Draw): string {
  let blocks = blocksOf(text);
  for (let left = draw.between(1, 5); left > 0; left--) blocks = editOnce(blocks, draw);
  return textOf(blocks);
}

const WORK = /^(?:labour|access|part|sublet|fee|option|shop|tool|vehicle)\b/;

function editOnce(blocks: string[][], draw: Draw): string[][] {
  const at = draw.pick(blocks.flatMap((block, i) => (WORK.test(block[0] ?? '') ? [i] : [])));
  const block = blocks[at] ?? [];
  const replaced = (lines: string[]) => blocks.map((one, i) => (i === at ? lines : one));
  switch (draw.upTo(7)) {
    case 0:
    case 1: return replaced(otherFigure(block, draw));
    case 2: return replaced(without(block, draw));
    case 3: return replaced([...block, ...newLine(block, draw)]);
    case 4: return renamed(blocks, at, draw);
    case 5: return linked(blocks, at, draw);
    case 6: return movedLine(blocks, draw);
    default: return draw.chance(30) ? blocks.filter((_, i) => i !== at) : replaced(otherFigure(block, draw));
  }
}

/** One figure of a block, with its range, is another. */
function otherFigure(block: readonly string[], draw: Draw): string[] {
  const lines = block.flatMap((line, i) => (/ \d+(?:\.\d+)?(?![\d-])/.test(line.replace(/"[^"]*"/g, '')) ? [i] : []));
  if (lines.length === 0) return [...block];
  const at = draw.pick(lines);
  return block.map((line, i) => (i === at ? line.replace(/("(?:[^"\\]|\\.)*")|( )(\d+(?:\.\d+)?)((?: \/ \d+(?:\.\d+)?){2})?(?![\d-])/g, (whole, title: string | undefined, gap: string, value: string) => (title !== undefined ? whole : `${gap}${scaled(value, draw)}`)) : line));
}

function scaled(value: string, draw: Draw): string {
  const [whole = '0', decimals] = value.split('.');
  const more = String(Math.max(1, Number(whole) + draw.between(0, 9) - 3));
  return decimals === undefined ? more : `${more}.${decimals}`;
}

/** A line below the head is gone, with what is below it. */
function without(block: readonly string[], draw: Draw): string[] {
  const groups = groupsBelow(block);
  if (groups.length === 0) return [...block];
  const gone = draw.pick(groups);
  return [block[0] as string, ...groups.filter((one) => one !== gone).flat()];
}

function newLine([head = '']: readonly string[], draw: Draw): string[] {
  if (!/^(?:option|access)\b/.test(head)) return [];
  return draw.chance(50) ? [`  part "New bracket ${draw.upTo(9)}" ${draw.between(1, 90)}.50 new`] : [`  sublet "New weld" ${draw.between(1, 90)}`];
}

/** A named line has another name, wherever it is used. */
function renamed(blocks: string[][], at: number, draw: Draw): string[][] {
  const name = /^(?:labour|access|part|sublet|fee|option|tool) ([a-z][\w-]*) /.exec(blocks[at]?.[0] ?? '')?.[1];
  return name === undefined ? blocks : renamedTo(blocks, name, `${name}-anew-${draw.upTo(9)}`);
}

/** Two lines of a kind swap their names, sometimes only where these are given and not where they are used. */
export function namesSwapped(text: string, draw: Draw): string {
  const blocks = blocksOf(text);
  const heads = blocks.flatMap(([head = '']) => {
    const [, kind, name] = /^(labour|access|part|sublet|fee|option) ([a-z][\w-]*) /.exec(head) ?? [];
    return kind === undefined || name === undefined ? [] : [{ kind, name }];
  });
  const pairs = heads.flatMap((one) => heads.flatMap((other) => (one.kind === other.kind && one.name < other.name ? [[one, other] as const] : [])));
  if (pairs.length === 0) return text;
  const [one, other] = draw.pick(pairs);
  if (draw.chance(70)) return textOf(swappedNames(blocks, one.name, other.name));
  const own = new RegExp(`^${one.kind} (${one.name}|${other.name}) `);
  return textOf(blocks.map((block) => block.map((line) => (own.test(line) ? textOf(swappedNames([[line]], one.name, other.name)).trimEnd() : line))));
}

/** Two names swapped wherever they stand outside titles. */
export function swappedNames(blocks: readonly BlockOfLines[], one: string, other: string): string[][] {
  return renamedTo(renamedTo(renamedTo(blocks, one, 'for-a-while'), other, one), 'for-a-while', other);
}

/** Every mention of a name outside titles. */
export function renamedTo(blocks: readonly BlockOfLines[], name: string, to: string): string[][] {
  const word = new RegExp(`("(?:[^"\\\\]|\\\\.)*")|(?<![\\w-])${name}(?![\\w-])`, 'g');
  return blocks.map((block) => block.map((line) => line.replace(word, (whole, title: string | undefined) => (title === undefined ? to : whole))));
}

/** An option or job brings in something more, or less. */
function linked(blocks: string[][], at: number, draw: Draw): string[][] {
  const block = blocks[at] ?? [];
  const kind = /^(\w+)/.exec(block[0] ?? '')?.[1] ?? '';
  const namesOf = (word: string) => blocks.flatMap(([head = '']) => new RegExp(`^${word} ([a-z][\\w-]*)`).exec(head)?.[1] ?? []);
  const [lead, names] = kind === 'option' ? draw.pick([['do', namesOf('labour')], ['fit', namesOf('part')], ['send', namesOf('sublet')], ['charge', namesOf('fee')]] as const) : kind === 'labour' || kind === 'access' ? (['uses', [...namesOf('part'), ...namesOf('sublet')]] as const) : (['', []] as const);
  const free = names.filter((name) => !block.some((line) => new RegExp(`(?<![\\w-])${name}(?![\\w-])`).test(line)));
  if (free.length === 0) return blocks;
  return blocks.map((one, i) => (i === at ? [...block, `  ${lead} ${draw.pick(free)}`] : one));
}

/** A part or outside work stands below another option. */
function movedLine(blocks: string[][], draw: Draw): string[][] {
  const options = blocks.flatMap((block, i) => (block[0]?.startsWith('option') === true ? [i] : []));
  if (options.length < 2) return blocks;
  const from = draw.pick(options);
  const to = draw.pick(options.filter((one) => one !== from));
  const line = groupsBelow(blocks[from] ?? []).find(([head = '']) => /^ {2}(?:part|sublet) /.test(head));
  if (line === undefined) return blocks;
  return blocks.map((block, i) => (i === from ? [block[0] as string, ...groupsBelow(block).filter((one) => one[0] !== line[0]).flat()] : i === to ? [...block, ...line] : block));
}
