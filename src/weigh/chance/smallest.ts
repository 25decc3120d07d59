/**
 * For each column (of at least one, all of one length) the share of cases in which it is the smallest; where several
 * are, the case is shared among them equally. The shares add up to 1. Columns are compared as they are: round them to
 * the smallest coin first where sums that were added in another order should tie. No cases: nobody has a share.
 */
export function shareSmallest(columns: readonly Float64Array[]): Float64Array {
  const shares = new Float64Array(columns.length);
  const cases = columns[0]?.length ?? 0;
  for (let i = 0; i < cases; i++) {
    let least = Infinity;
    let ties = 0;
    for (const column of columns) {
      const value = column[i] as number;
      ties = value < least ? 1 : value === least ? ties + 1 : ties;
      if (value < least) least = value;
    }
    for (let k = 0; k < columns.length; k++) if (columns[k]?.[i] === least) shares[k] = (shares[k] as number) + 1 / ties;
  }
  return cases === 0 ? shares : shares.map((sum) => sum / cases);
}
