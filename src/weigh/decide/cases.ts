/** How many cases are drawn. */
export const CASES = 1000;

/** The seed of the draws: the same file gives the same bytes everywhere. */
export const SEED = 20_261_125;
