import type { Block } from '../language/index.js';
import type { Access, Estimate, Option, Source } from '../estimate/index.js';

/** The blocks of text that an option's figures rest on: an error in one of them, and the figures may be wrong. */
export function restsOn(option: Option, estimate: Estimate): ReadonlySet<Block> {
  const ways = new Set<Access>(option.way ?? []);
  for (const job of option.labour) for (const mode of job.modes) for (const way of mode.with) ways.add(way);
  for (const way of estimate.access) if (way.includes.some((one) => ways.has(one))) ways.add(way);

  const shop = estimate.shop.source;
  const vehicle = option.worth === undefined ? estimate.vehicle : undefined;
  const sources: readonly (Source | undefined)[] = [
    option, shop, vehicle,
    ...option.labour, ...option.labour.flatMap((job) => job.tools), ...option.parts, ...option.sublets, ...option.fees,
    ...ways, ...[...ways].flatMap((way) => [...way.parts, ...way.sublets, ...way.tools]),
  ];
  return new Set(sources.flatMap((source) => (source === undefined ? [] : [source.record.block])));
}
