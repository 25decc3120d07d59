import type { Option } from './option-types.js';
import type { Fee, Shop } from './shop-types.js';
import type { Estimate } from './types.js';
import type { Access, Chance, Core, Labour, Part, Sublet } from './work-types.js';

/** Lines that may be clocked or paid, by name and title. */
export type Lines<L> = readonly { readonly name: string | undefined; readonly title: string; readonly line: L }[];

/** All lines that an option has, whichever way in is taken, with those of what may turn up. */
export interface LinesOfOption {
  readonly work: Lines<Labour | Access | Core>;
  readonly goods: Lines<Part | Sublet | Fee>;
  readonly cores: Lines<Part>;
}

/** What putting a core together is called. */
export function assembleTitle(part: Pick<Part, 'title'>): string {
  return `${part.title}: put the core together`;
}

export function linesOfOption(option: Option | undefined, { access, chances }: Pick<Estimate, 'access' | 'chances'>, shop: Pick<Shop, 'fees'>): LinesOfOption {
  if (option === undefined) return { work: [], goods: [], cores: [] };
  const turns = turnsUp(option, access, chances);
  const all = [option, ...turns.found];
  const ways = [...turns.ways];
  const parts = once([...all.flatMap((one) => one.parts), ...ways.flatMap((way) => way.parts)]);
  const goods: (Part | Sublet | Fee)[] = [...parts, ...all.flatMap((one) => one.sublets), ...ways.flatMap((way) => way.sublets), ...all.flatMap((one) => one.fees), ...shop.fees];
  const cores = parts.flatMap((part) => (part.core?.assemble === undefined ? [] : [{ name: undefined, title: assembleTitle(part), line: part.core }]));
  return {
    work: [...once([...all.flatMap((one) => one.labour), ...ways]).map(listed), ...cores],
    goods: once(goods).map(listed),
    cores: parts.map(listed),
  };
}

function once<T>(things: readonly T[]): T[] {
  return [...new Set(things)];
}

function listed<L extends { readonly name: string | undefined; readonly title: string }>(line: L): Lines<L>[0] {
  return { name: line.name, title: line.title, line };
}

export function named<L>(lines: Lines<L>, name: string): L | undefined {
  return lines.find((one) => one.name === name)?.line;
}

/** Every chance that may come true in an option, whichever way in it takes, and all the ways in that its work may take. */
function turnsUp(option: Option, access: Estimate['access'], chances: Estimate['chances']): { readonly found: ReadonlySet<Chance>; readonly ways: ReadonlySet<Access> } {
  const found = new Set<Chance>();
  const ways = new Set<Access>();
  const visit = (chance: Chance) => {
    if (found.has(chance)) return;
    found.add(chance);
    chance.chances.forEach(visit);
    chance.labour.forEach(visitJob);
  };
  const visitJob = (job: Labour) => {
    (chances.get(job.record) ?? []).forEach(visit);
    for (const mode of job.modes) mode.with.forEach(visitWay);
  };
  const visitWay = (way: Access) => {
    if (ways.has(way)) return;
    ways.add(way);
    (chances.get(way.record) ?? []).forEach(visit);
    way.includes.forEach(visitWay);
    for (const other of access) if (other.includes.includes(way)) visitWay(other);
  };
  option.chances.forEach(visit);
  option.labour.forEach(visitJob);
  option.way?.forEach(visitWay);
  option.staged?.ways.forEach(visitWay);
  return { found, ways };
}
