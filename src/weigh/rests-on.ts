import type { Block } from '../language/index.js';
import type { Access, Estimate, Option, Source, Stage } from '../estimate/index.js';

/** The blocks of text that an option's figures rest on: an error in one of them, and the figures may be wrong. */
export function restsOn(option: Option, estimate: Estimate): ReadonlySet<Block> {
  const vehicle = option.worth === undefined ? estimate.vehicle : undefined;
  const ways = [...(option.way ?? []), ...(option.staged?.ways ?? [])];
  return blocksOf([option, vehicle, ...(option.staged === undefined ? [] : estimate.stages), ...option.fees], option, ways, estimate);
}

/** The same for what a stage comes to by itself, and for putting it back. */
export function stageRestsOn(stage: Stage, estimate: Estimate): ReadonlySet<Block> {
  return blocksOf([stage, ...stage.destroys], stage, stage.opens, estimate);
}

function blocksOf(own: readonly (Source | undefined)[], { labour, parts, sublets }: Pick<Option, 'labour' | 'parts' | 'sublets'>, opened: readonly Access[], { access, shop }: Estimate): ReadonlySet<Block> {
  const ways = new Set<Access>(opened);
  for (const job of labour) for (const mode of job.modes) for (const way of mode.with) ways.add(way);
  for (const way of access) if (way.includes.some((one) => ways.has(one))) ways.add(way);
  const sources: readonly (Source | undefined)[] = [
    ...own, shop.source,
    ...labour, ...labour.flatMap((job) => job.tools), ...parts, ...sublets,
    ...ways, ...[...ways].flatMap((way) => [...way.parts, ...way.sublets, ...way.tools]),
  ];
  return new Set(sources.flatMap((source) => (source === undefined ? [] : [source.record.block])));
}
