import { bring, type Option } from '../../estimate/index.js';

/**
 * What an option says that only one with work would, where it has none; undefined where nothing is odd. Work of a stage
 * is in every option. One that stops or drives on may say why, how long the vehicle lasts and what may happen then, and
 * says what it is worth.
 */
export function promiseOf({ labour, staged, parts, sublets, harvests, warranty, leavesOut, worth, lasts, because, chances, written }: Option): string | undefined {
  const before = staged?.labour ?? [];
  if (!written || labour.length > before.length || harvests.length > 0) return undefined;
  const brought = bring(before);
  if (parts.length > brought.parts.length || sublets.length > brought.sublets.length) return undefined;
  if (warranty !== undefined) return 'says how long it is warranted';
  if (leavesOut.length > 0) return 'says what it leaves out';
  if (worth !== undefined) return undefined;
  if (lasts !== undefined) return 'says how long the vehicle lasts after it';
  if (chances.length > 0) return 'says what may turn up in it';
  return because.length > 0 ? 'names a finding that it rests on' : undefined;
}
