/** What an error says of itself; whatever else was thrown, as text. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
