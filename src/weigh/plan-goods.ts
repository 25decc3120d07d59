import { assembleTitle, type Access, type Labour, type Option, type Part, type Shop, type Tool } from '../estimate/index.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { coreLine, partLine, subletLine } from './price-goods.js';
import { accessWork, hoursLine, toolLine } from './price-labour.js';

/** What some work brings along: its own parts and outside work, and the tools of its jobs. */
export interface BroughtAlong extends Pick<Option, 'labour' | 'parts' | 'sublets'> {
  readonly staged?: Option['staged'];
  /** Tools that are hired anyway, whatever the jobs need. */
  readonly hired?: readonly Tool[];
}

/** The lines that stand whatever the way in. */
export function fixedLines(work: BroughtAlong, shop: Shop, money: Money): Line[] {
  const lines: Line[] = [];
  for (const part of work.parts) {
    if (part.core === undefined) lines.push(partLine(part, 'work', shop, money));
    else lines.push(...partLines(part, 'work', shop, money));
  }
  for (const sublet of work.sublets) lines.push(subletLine(sublet, 'work', shop, money));
  for (const tool of toolsOf(work.labour)) {
    const hire = toolLine(tool, 'work', money);
    if (hire !== undefined) lines.push(hire);
  }
  return lines;
}

function partLines(part: Part, share: Line['share'], shop: Shop, money: Money): Line[] {
  const line = partLine(part, share, shop, money);
  const charge = coreLine(part, money);
  const { core } = part;
  if (charge === undefined || core === undefined) return [line];
  return [line, charge, ...(core.assemble === undefined ? [] : [hoursLine(assembleTitle(part), core.assemble, core.rate, charge, money)])];
}

/** Something that a way in needs, with its lines. Goods that two ways use are one thing, and charged once. */
export interface Opening {
  readonly thing: object;
  readonly lines: readonly Line[];
}

/**
 * What a way in needs, without the goods and tools that the work brings along anyway. Its parts and outside work belong
 * to closing it: one that is left open has none. What is hired for it is hired to get in.
 */
export function goodsOfWay(way: Access, work: BroughtAlong, shop: Shop, money: Money): Opening[] {
  const tools = [...toolsOf(work.labour), ...(work.hired ?? [])];
  const hired = way.tools.filter((tool) => !tools.includes(tool)).map((tool) => ({ thing: tool, lines: [toolLine(tool, 'access', money) ?? []].flat() }));
  if (work.staged?.then === 'left open' && work.staged.ways.includes(way)) return [{ thing: way, lines: accessWork(way, money, ['remove']) }, ...hired];
  return [
    { thing: way, lines: accessWork(way, money) },
    ...way.parts.filter((part) => !work.parts.includes(part)).map((part) => ({ thing: part, lines: partLines(part, 'access', shop, money) })),
    ...way.sublets.filter((sublet) => !work.sublets.includes(sublet)).map((sublet) => ({ thing: sublet, lines: [subletLine(sublet, 'access', shop, money)] })),
    ...hired,
  ];
}

/** The lines of ways in by themselves. */
export function linesOfWays(ways: readonly Access[], shop: Shop, money: Money): Line[] {
  return onceEach(ways.flatMap((way) => goodsOfWay(way, { parts: [], sublets: [], labour: [] }, shop, money)));
}

/** The lines of goods, each once. */
export function onceEach(goods: readonly Opening[]): Line[] {
  const seen = new Set<object>();
  return goods.flatMap(({ thing, lines }) => {
    if (seen.has(thing)) return [];
    seen.add(thing);
    return lines;
  });
}

/** A thing that another way uses too is left out of the bound, which must never be above the true price. */
export function sharedWith(thing: object, all: readonly (readonly Opening[])[], own: readonly Opening[]): boolean {
  return all.some((goods) => goods !== own && goods.some((other) => other.thing === thing));
}

function toolsOf(jobs: readonly Labour[]): Tool[] {
  return [...new Set(jobs.flatMap((job) => job.tools))];
}
