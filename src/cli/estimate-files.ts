import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';

/** Folders that hold no estimates of the shop's own. */
const PASSED_OVER = new Set(['node_modules']);

/**
 * The estimate files below a folder, or a file itself, in the order of their names. Links are not followed, so that
 * nothing goes round in a circle or leads out; hidden folders are passed over, and so is what may not be read.
 */
export function* estimateFilesBelow(place: string): Generator<string> {
  if (!statSync(place).isDirectory()) {
    yield place;
    return;
  }
  for (const entry of entriesOf(place)) {
    const inside = path.join(place, entry.name);
    if (entry.isDirectory() && !entry.name.startsWith('.') && !PASSED_OVER.has(entry.name)) yield* estimateFilesBelow(inside);
    else if (entry.isFile() && /\.yard$/i.test(entry.name)) yield inside;
  }
}

function entriesOf(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return [];
  }
}
