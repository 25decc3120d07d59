/** The limits of the written form, in one place. Each has its own message. */
export const limits = {
  /** Characters in one line. A worksheet line has about 80. */
  lineLength: 2_000,
  /** Levels of indentation. The vocabulary uses four. */
  depth: 12,
  /** Characters in one file. */
  fileLength: 8_000_000,
} as const;
