/** The limits of the written form, in one place. Each has its own message. */
export const limits = {
  /** Characters in one line. A worksheet line has about 80. */
  lineLength: 2_000,
  /** Levels of indentation. The vocabulary uses four. */
  depth: 12,
  /** Characters in one file, and lines at its left edge; more is not read at all. */
  fileLength: 8_000_000,
  blocks: 200_000,
  /** Problems told of one file; behind the line with the last one the file is not read on. */
  problems: 500,
} as const;
